import * as v from 'valibot';
import { laterBy } from '../../src/record/brand.ts';
import type { Body, Reading } from '../../src/record/entry.ts';
import { bodySchemas, type KnownKind } from '../../src/record/kinds.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { lineOfId, type FlownStep } from '../flights/scriptSteps.ts';
import { clockText } from './briefDriver.ts';
import { chooseChip, openPad, putDigits, putReading, putWords } from './flyDetails.ts';
import { enterEvent } from './flyEventFields.ts';
import { FlyEvents } from './flyEvents.ts';
import { gaugesOf, keyGlance, keyReading } from './flyPads.ts';
import type { Scribe } from './scribe.ts';

const PRESSURE = { wholeDigits: 2, decimals: 1 };

/** Gauges of one look are entered one after the other within this time. */
const GLANCE_S = 30;
const LOG_PAGES = 6;
/** Two tiles touched at once would be one finger that met both. */
const SECOND_TOUCH_MS = 500;

type Common = Pick<Body<'markMade'>, 'calledBy' | 'doubtS' | 'basis' | 'basisWords' | 'at'>;

/** Enters on Fly what a scribe would, step after step, each by the touches that it takes and at its own time. */
export class FlyDriver {
  private readonly scribe: Scribe;
  private readonly sheet: FlightSheet;
  private readonly events: FlyEvents;
  /** Tablet time and kind of what was entered, by its line: where the log has it. */
  private readonly entered = new Map<number, FlownStep>();

  constructor(scribe: Scribe, sheet: FlightSheet) {
    this.scribe = scribe;
    this.sheet = sheet;
    this.events = new FlyEvents(scribe);
  }

  /** What one line of a script says: two touches where it says two things, first the one that wants fewer words. */
  async enter(steps: readonly FlownStep[]): Promise<void> {
    const fields = ({ body }: FlownStep): number =>
      Object.keys(JSON.parse(JSON.stringify(body))).length;
    const inOrder = steps.toSorted((a, b) => fields(a) - fields(b));
    for (const [place, step] of inOrder.entries()) {
      await this.enterStep({
        ...step,
        writtenMs: laterBy(step.writtenMs, place * SECOND_TOUCH_MS),
      });
    }
  }

  private async enterStep(step: FlownStep): Promise<void> {
    await this.events.reach(step.kind, step.writtenMs);
    await this.write(step, JSON.parse(JSON.stringify(step.body)));
    this.entered.set(step.line, step);
  }

  /** Ends the flight; the app goes to Debrief. */
  async endFlight(atMs: number): Promise<void> {
    await this.events.reach('markMade', atMs);
    await this.events.openPad('desk');
    await this.scribe.tap('desk-end');
    await this.scribe.hold('end-flight', 900);
    await this.scribe.tablet.shown('tab-answers');
  }

  private async write(step: FlownStep, body: unknown): Promise<void> {
    const { kind, writtenMs } = step;
    switch (kind) {
      case 'fuelRead':
        return this.glance('fuel', v.parse(bodySchemas.fuelRead, body).readings ?? [], writtenMs);
      case 'fuelStateRead':
        return this.glance(
          'tank',
          v.parse(bodySchemas.fuelStateRead, body).readings ?? [],
          writtenMs,
        );
      case 'entryWithdrawn':
        return this.withdraw(v.parse(bodySchemas.entryWithdrawn, body), writtenMs);
      case 'entryAmended':
        return this.amend(v.parse(bodySchemas.entryAmended, body), writtenMs);
      case 'rakeRead':
        return this.rake(v.parse(bodySchemas.rakeRead, body), writtenMs);
      default: {
        await enterEvent(this.scribe, this.sheet, { kind, body }, (act) =>
          this.events.touch(act, writtenMs),
        );
        const common = v.parse(bodySchemas.markMade, body);
        await this.readingsOf(kind, common.readings ?? []);
        await this.common(common);
      }
    }
  }

  private async glance(of: 'fuel' | 'tank', read: readonly Reading[], atMs: number) {
    await this.events.openPad(of);
    await keyGlance(this.scribe, gaugesOf(this.sheet, of), read, atMs);
  }

  /** Readings that belong to another event; those of probes are asked for by probe. */
  private async readingsOf(kind: KnownKind, read: readonly Reading[]): Promise<void> {
    const rows = read.flatMap((row) => ('value' in row ? [row] : []));
    if (kind === 'probesRead') {
      return this.pressures(rows);
    }
    for (const { instrument, value } of rows) {
      const gauge = this.sheet.instruments.find((each) => each.id === instrument);
      if (gauge === undefined) {
        throw new Error(`no gauge ${instrument} on the flight sheet`);
      }
      await putReading(this.scribe, instrument, value, gauge.format);
    }
  }

  private async pressures(
    rows: readonly { readonly instrument: string; readonly value: number }[],
  ) {
    if (rows.length === 0) {
      return;
    }
    const { scribe } = this;
    await openPad(scribe, 'pressures');
    for (const { instrument, value } of rows) {
      if (!(await scribe.isThere(`pressure-${instrument}`))) {
        await scribe.tap('wing-other');
      }
      await scribe.tap(`pressure-${instrument}`);
      await keyReading(scribe, value, PRESSURE);
    }
    await scribe.tap('pad-close');
  }

  private async rake(body: Body<'rakeRead'>, atMs: number): Promise<void> {
    const { scribe } = this;
    await this.events.openPad('rake');
    const before = await scribe.tablet.saved();
    await scribe.tapAt(`rake-${body.rake}`, atMs);
    await scribe.tablet.savedBeyond(before);
    for (const tube of body.tubes ?? []) {
      await keyReading(scribe, tube, PRESSURE);
    }
    await scribe.tap('key-erase');
    if (body.laminar !== undefined) {
      await chooseChip(scribe, 'laminar', body.laminar ? 'Laminar' : 'Turbulent');
    }
  }

  private async withdraw(body: Body<'entryWithdrawn'>, atMs: number): Promise<void> {
    const { scribe } = this;
    await this.choose(lineOfId(body.target), () => true);
    const before = await scribe.tablet.saved();
    await scribe.tapAt('withdraw', atMs);
    await scribe.tablet.savedBeyond(before);
    await putWords(this.scribe, 'reason', body.reason);
    await this.closePad();
  }

  /** A reading put right: the new digits are entered at the time of the amendment. */
  private async amend(body: Body<'entryAmended'>, atMs: number): Promise<void> {
    const { scribe } = this;
    const [change] = body.changes;
    const instrument = /^readings\.(\w+)\.value$/.exec(change?.field ?? '')?.[1] ?? '';
    const gauge = this.sheet.instruments.find((each) => each.id === instrument);
    if (gauge === undefined || typeof change?.new !== 'number') {
      throw new Error(`an amendment on Fly must be of a reading, got ${change?.field}`);
    }
    await this.choose(lineOfId(body.target), (words) => words.includes(String(change.old)));
    await scribe.tap('amend');
    await putReading(scribe, instrument, change.new, gauge.format, { enterMs: atMs });
    await putWords(this.scribe, 'reason', body.reason);
    await putWords(this.scribe, 'basisWords', body.basisWords);
    await this.closePad();
  }

  /** Chooses an entry in the log by its time and words. */
  private async choose(line: number, isIt: (words: string) => boolean): Promise<void> {
    const step = this.entered.get(line);
    if (step === undefined) {
      throw new Error(`line ${line} must be entered before it is chosen`);
    }
    await this.events.openPad('log');
    for (let page = 0; page < LOG_PAGES; page += 1) {
      const row = (await this.scribe.tablet.targets()).find(
        ({ act, words }) =>
          /^log-\d+$/.test(act) && isWithin(words, step.atMs, GLANCE_S) && isIt(words),
      );
      if (row !== undefined) {
        await this.scribe.tap(row.act);
        return;
      }
      await this.scribe.tap('log-older');
    }
    throw new Error(`the log has nothing at ${clockText(step.atMs)}`);
  }

  private async closePad(): Promise<void> {
    if (await this.scribe.isThere('pad-close')) {
      await this.scribe.tap('pad-close');
    }
  }

  private async common({ calledBy, at, doubtS, basis, basisWords }: Common): Promise<void> {
    await putWords(this.scribe, 'who', calledBy);
    if (at !== undefined) {
      await putDigits(
        this.scribe,
        'time',
        clockText(Math.round(at / 1000) * 1000).replaceAll(':', ''),
      );
    }
    await chooseChip(
      this.scribe,
      'doubt',
      doubtS === undefined ? undefined : `\u00b1${doubtS}\u00a0s`,
    );
    await chooseChip(this.scribe, 'basis', basis);
    await putWords(this.scribe, 'basis', basisWords);
  }
}

/** Whether a row of the log begins with a time of day at most so long after an instant. */
function isWithin(words: string, fromMs: number, seconds: number): boolean {
  const times = Array.from({ length: seconds }, (_, second) => clockText(fromMs + second * 1000));
  return times.some((time) => words.startsWith(time));
}
