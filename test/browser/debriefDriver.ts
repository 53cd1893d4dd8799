import * as v from 'valibot';
import type { Body } from '../../src/record/entry.ts';
import { bodySchemas } from '../../src/record/kinds.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { lineOfId, type FlownStep } from '../flights/scriptSteps.ts';
import { clockText } from './briefDriver.ts';
import type { Scribe } from './scribe.ts';

/** Page time before a form is written to fill it. */
const FORM_MS = 40_000;
/** A reading is looked for among rows of this many seconds after its first digit. */
const GLANCE_S = 30;

/** Enters on Debrief what is written after the flight, each form by its touches and at its own time. */
export class DebriefDriver {
  private readonly scribe: Scribe;
  private readonly sheet: FlightSheet;
  private readonly utcOfLine: (line: number) => number;

  /** @param utcOfLine when a line's event was, by the master clock: that is what Debrief shows */
  constructor(scribe: Scribe, sheet: FlightSheet, utcOfLine: (line: number) => number) {
    this.scribe = scribe;
    this.sheet = sheet;
    this.utcOfLine = utcOfLine;
  }

  async enter(step: FlownStep): Promise<void> {
    const { scribe } = this;
    const { writtenMs } = step;
    const body: unknown = JSON.parse(JSON.stringify(step.body));
    scribe.waitUntil(writtenMs - FORM_MS);
    switch (step.kind) {
      case 'sampleHandedOver': {
        const { samples, to, seals } = v.parse(bodySchemas.sampleHandedOver, body);
        await this.form('handover');
        for (const sample of samples) {
          await scribe.tap(`sample-${sample}`);
        }
        await scribe.put('to', to);
        await this.text('seals', seals);
        return this.save(writtenMs, `Handed over: ${samples.join(', ')}.`);
      }
      case 'panelsInspected': {
        await this.form('inspection');
        for (const { panel, finding } of v.parse(bodySchemas.panelsInspected, body).findings) {
          if (finding === 'clean') {
            await scribe.tap(`clean-${panel}`);
          } else {
            await scribe.put(`finding-${panel}`, finding);
          }
        }
        return this.save(writtenMs, 'Inspection written.');
      }
      case 'squawkRaised':
        return this.squawk(v.parse(bodySchemas.squawkRaised, body), writtenMs);
      case 'entryAmended':
        return this.amend(v.parse(bodySchemas.entryAmended, body), writtenMs);
      case 'logSigned':
        return this.sign(v.parse(bodySchemas.logSigned, body), writtenMs);
      case 'labResultReceived': {
        const result = v.parse(bodySchemas.labResultReceived, body);
        await this.form('lab');
        await scribe.put('sample-other', result.sample);
        await this.text('size', result.meanSizeMicrometre?.toString());
        await this.text('number', result.numberPerLitre?.toString());
        await this.text('method', result.method);
        await this.text('analyst', result.analyst);
        return this.save(writtenMs, `Lab result of ${result.sample} written.`);
      }
      default:
        throw new Error(`nobody enters ${step.kind} on Debrief`);
    }
  }

  private async squawk(body: Body<'squawkRaised'>, atMs: number): Promise<void> {
    const { scribe } = this;
    await this.form('squawk');
    await scribe.put('squawk', body.squawk);
    const isPanel = (name: string): boolean => this.sheet.panels.some(({ id }) => id === name);
    for (const panel of body.panels.filter(isPanel)) {
      await scribe.tap(`panel-${panel}`);
    }
    const elsewhere = body.panels.filter((name) => !isPanel(name));
    await this.text('panels-other', elsewhere.length > 0 ? elsewhere.join(' ') : undefined);
    await scribe.put('words', body.words);
    await this.text('severity', body.severity);
    await this.text('labour', body.labourH?.toString());
    await this.save(atMs, `Squawk ${body.squawk} written.`);
  }

  /** Each gauge that was put right has a row of its own: it was read, and entered, by itself. */
  private async amend(body: Body<'entryAmended'>, atMs: number): Promise<void> {
    const { scribe } = this;
    await scribe.tap('tab-timeline');
    for (const [place, change] of body.changes.entries()) {
      const instrument = /^readings\.(\w+)\.value$/.exec(change.field)?.[1] ?? '';
      await this.choose(lineOfId(body.target), instrument, String(change.old));
      await scribe.tap('detail-amend');
      await scribe.put(`field-${change.field}`, String(change.new));
      await scribe.tap(`code-${body.code}`);
      await scribe.put('reason', body.reason);
      await this.text('basis', body.basisWords);
      await this.text('countersigned', body.countersignedBy);
      // The last of them is written at the time of the amendment, the others just before it.
      if (place < body.changes.length - 1) {
        await scribe.tap('save');
      } else {
        await scribe.tapAt('save', atMs);
      }
      await this.said('Amended:');
      await scribe.tablet.shown('detail-amend');
    }
  }

  /** Touches the row of one gauge's reading in the table. */
  private async choose(line: number, instrument: string, shown: string): Promise<void> {
    const { scribe } = this;
    await scribe.put('filter-words', shown);
    await scribe.tablet.shown('row');
    const fromMs = this.utcOfLine(line);
    const times = Array.from({ length: GLANCE_S }, (_, second) =>
      clockText(fromMs + (second - 1) * 1000),
    );
    const gauge = this.sheet.instruments.find(({ id }) => id === instrument);
    // The table narrows after the words are typed: whole rows are looked at, until one of them is it.
    const found = await scribe.tablet.page.waitForFunction(
      (wanted) => {
        const rows = [...document.querySelectorAll<HTMLElement>('tr:has([data-act="row"])')];
        const row = rows.find(
          ({ innerText }) =>
            wanted.times.some((time) => innerText.includes(time)) &&
            innerText.includes(wanted.shown) &&
            innerText.includes(wanted.engine),
        );
        return row?.querySelector<HTMLElement>('[data-act="row"]')?.dataset['entry'];
      },
      { times, shown, engine: `engine ${gauge?.consumer}` },
    );
    await scribe.tap({ act: 'row', entry: String(await found.jsonValue()) });
  }

  private async sign(body: Body<'logSigned'>, atMs: number): Promise<void> {
    const { scribe } = this;
    await scribe.tap('tab-sign');
    for (const signer of body.signedBy) {
      await scribe.tap(`signer-${signer}`);
    }
    const known = new Set<string>();
    await scribe.tablet.shown('sign');
    for (const { act, words } of await scribe.tablet.targets()) {
      if (/^open-item-\d+$/.test(act)) {
        if (body.openItems.includes(words)) {
          known.add(words);
        } else {
          await scribe.tap(act);
        }
      }
    }
    const others = body.openItems.filter((item) => !known.has(item));
    await scribe.put('open-other', others.join('\n'));
    await scribe.tapAt('sign', atMs);
    await this.said('Signed by');
  }

  private async form(id: string): Promise<void> {
    await this.scribe.tap('tab-forms');
    await this.scribe.tap(`form-${id}`);
  }

  private async save(atMs: number, said: string): Promise<void> {
    await this.scribe.tapAt('save', atMs);
    await this.said(said);
  }

  private async said(words: string): Promise<void> {
    await this.scribe.tablet.page.getByRole('status').filter({ hasText: words }).first().waitFor();
  }

  private async text(act: string, text: string | undefined): Promise<void> {
    if (text !== undefined) {
      await this.scribe.put(act, text);
    }
  }
}
