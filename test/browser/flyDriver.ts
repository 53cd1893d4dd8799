import * as v from 'valibot';
import { laterBy } from '../../src/record/brand.ts';
import type { Body, Reading } from '../../src/record/entry.ts';
import { bodySchemas, type KnownKind } from '../../src/record/kinds.ts';
import type { FlightSheet, Measure } from '../../src/record/sheet.ts';
import { lineOfId, type FlownStep } from '../flights/scriptSteps.ts';
import { clockText } from './briefDriver.ts';
import { chooseChip, openPad, putDigits, putNumber, putReading, putWords } from './flyDetails.ts';
import { FlyEvents } from './flyEvents.ts';
import { gaugesOf, keyGlance, keyReading, nameCovers, nameProbes } from './flyPads.ts';
import type { Scribe } from './scribe.ts';

const PRESSURE = { wholeDigits: 2, decimals: 1 };
const HEIGHT = { wholeDigits: 5, decimals: 0 };
const COUNT = { wholeDigits: 4, decimals: 0 };
const MACH = { wholeDigits: 1, decimals: 3 };

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
    await this.scribe.tablet.shown('tab-points');
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
        await this.event(kind, body, writtenMs);
        const common = v.parse(bodySchemas.markMade, body);
        await this.readingsOf(kind, common.readings ?? []);
        await this.common(common);
      }
    }
  }

  /** The touch of an event, then the fields that only its kind has. */
  private async event(kind: KnownKind, body: unknown, atMs: number): Promise<void> {
    const { scribe } = this;
    const touch = (act: string): Promise<void> => this.events.touch(act, atMs);
    switch (kind) {
      case 'recorderSwitched': {
        const { on, channels, medium } = v.parse(bodySchemas.recorderSwitched, body);
        await touch(on ? 'rec-on' : 'rec-off');
        await this.number('channels', channels, COUNT);
        return this.words('text', medium);
      }
      case 'photoPanelSwitched': {
        const { on, frame, everyS, medium } = v.parse(bodySchemas.photoPanelSwitched, body);
        await touch(on ? 'photo-on' : 'photo-off');
        await this.number('frame', frame, COUNT);
        await this.number('every', everyS, COUNT);
        return this.words('text', medium);
      }
      case 'engineStarted': {
        const { engine } = v.parse(bodySchemas.engineStarted, body);
        await touch('engine-start');
        return this.chip('engine', engine?.toString());
      }
      case 'engineShutDown': {
        const { engines = [] } = v.parse(bodySchemas.engineShutDown, body);
        await touch('engine-stop');
        const all = engines.length === this.sheet.aircraft.engineCount;
        return this.chip('engines', all ? 'All' : engines[0]?.toString());
      }
      case 'blocksOff': {
        await touch('blocks-off');
        return this.measure('weight', v.parse(bodySchemas.blocksOff, body).grossWeight);
      }
      case 'blocksOn':
        return touch('blocks-on');
      case 'takeOffRolled':
      case 'touchedDown': {
        const { runway } = v.parse(bodySchemas.touchedDown, body);
        await touch(kind === 'touchedDown' ? 'touchdown' : 'roll');
        return runway === undefined ? undefined : putDigits(scribe, 'runway', runway);
      }
      case 'liftedOff':
        return touch('liftoff');
      case 'gearMoved':
        return touch(`gear-${v.parse(bodySchemas.gearMoved, body).to}`);
      case 'coversReleased': {
        const { wing, clear, hung, altitude, command } = v.parse(bodySchemas.coversReleased, body);
        await touch(wing === 'R' ? 'covers-right' : 'covers-left');
        const all = this.sheet.panels.filter((panel) => panel.wing === wing).map(({ id }) => id);
        await nameCovers(scribe, clear ?? [], hung ?? [], all);
        await this.measure('height', altitude);
        const COMMANDS = ['First', 'Second', 'Third'];
        return this.chip('command', command === undefined ? undefined : COMMANDS[command - 1]);
      }
      case 'levelledOff': {
        const { altitude, grossWeight } = v.parse(bodySchemas.levelledOff, body);
        await touch('level');
        await this.measure('height', altitude);
        return this.measure('weight', grossWeight);
      }
      case 'descentBegun':
        return touch('descend');
      case 'conditionReached': {
        const { leg } = v.parse(bodySchemas.conditionReached, body);
        await touch('cond-on');
        return this.chip('leg', leg === undefined ? undefined : `Leg ${leg}`);
      }
      case 'turnStarted': {
        const { fromLeg, toLeg, lastedS } = v.parse(bodySchemas.turnStarted, body);
        await touch('turn-start');
        await this.chip('fromLeg', fromLeg === undefined ? undefined : `Leg ${fromLeg}`);
        await this.chip('toLeg', toLeg === undefined ? undefined : `Leg ${toLeg}`);
        return this.number('lasted', lastedS, COUNT);
      }
      case 'testPointStarted':
      case 'testPointEnded':
      case 'testPointInterrupted':
      case 'testPointTerminated': {
        const { point, reason } = v.parse(bodySchemas.testPointTerminated, body);
        await touch(POINT_ACTS[kind]);
        await this.words('reason', reason);
        const card = this.sheet.testCards.find((each) => each.id === point);
        return this.chip('point', `${point} ${card?.title}`);
      }
      case 'timeHackTaken': {
        const { shown, master } = v.parse(bodySchemas.timeHackTaken, body);
        await touch('hack');
        await putDigits(scribe, 'master', clockText(master).replaceAll(':', ''));
        for (const each of shown) {
          const digits = clockText(each.shown).replaceAll(':', '');
          await putDigits(scribe, `clock-${each.clock}`, digits);
        }
        return;
      }
      default:
        return this.flowEvent(kind, body, touch);
    }
  }

  /** Suction, flow, weather, and what people said. */
  private async flowEvent(
    kind: KnownKind,
    body: unknown,
    touch: (act: string) => Promise<void>,
  ): Promise<void> {
    switch (kind) {
      case 'suctionUnitSwitched': {
        const { on, state } = v.parse(bodySchemas.suctionUnitSwitched, body);
        await touch(on ? 'unit-on' : 'unit-off');
        return this.words('state', state);
      }
      case 'suctionTurnedOn':
      case 'suctionChanged': {
        const { wing, setting } = v.parse(bodySchemas.suctionChanged, body);
        const on = wing === 'both' ? 'suction-on' : SUCTION_ON[wing];
        await touch(kind === 'suctionTurnedOn' ? on : 'suction-change');
        return this.words('setting', setting);
      }
      case 'suctionTurnedOff':
        return touch('suction-off');
      case 'throttleChanged':
        await touch('power');
        return this.words('setting', v.parse(bodySchemas.throttleChanged, body).setting);
      case 'laminarGained':
      case 'laminarLost':
      case 'probesRead': {
        const { wings = {}, panels = [], byCommand } = v.parse(bodySchemas.laminarGained, body);
        await touch(FLOW_ACTS[kind]);
        await nameProbes(this.scribe, wings, panels);
        return this.chip('byCommand', byCommand === true ? 'By command' : undefined);
      }
      case 'moistureEntered':
      case 'moistureExited': {
        const { look, encounter } = v.parse(bodySchemas.moistureEntered, body);
        await touch(kind === 'moistureEntered' ? 'cloud-in' : 'cloud-out');
        await this.words('look', look);
        return this.chip('encounter', encounter);
      }
      case 'samplerOpened':
      case 'samplerClosed': {
        const { purpose, sampler, sample } = v.parse(bodySchemas.samplerOpened, body);
        await touch(kind === 'samplerOpened' ? 'sampler-open' : 'sampler-close');
        await this.words('purpose', purpose);
        await this.words('sampler', sampler);
        return this.words('sample', sample);
      }
      case 'turbulenceEntered': {
        const { strength, machFrom, machTo } = v.parse(bodySchemas.turbulenceEntered, body);
        await touch('rough-in');
        await this.words('strength', strength);
        await this.number('machFrom', machFrom, MACH);
        return this.number('machTo', machTo, MACH);
      }
      case 'pilotCommented':
      case 'noted': {
        await touch(kind === 'noted' ? 'note' : 'pilot');
        return this.words('words', v.parse(bodySchemas.noted, body).words);
      }
      case 'jokerReached':
        return touch('joker');
      default:
        throw new Error(`nobody enters ${kind} on Fly`);
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
    await this.words('reason', body.reason);
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
    await this.words('reason', body.reason);
    await this.words('basisWords', body.basisWords);
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
    await this.words('who', calledBy);
    if (at !== undefined) {
      await putDigits(
        this.scribe,
        'time',
        clockText(Math.round(at / 1000) * 1000).replaceAll(':', ''),
      );
    }
    await this.chip('doubt', doubtS === undefined ? undefined : `\u00b1${doubtS}\u00a0s`);
    await this.chip('basis', basis);
    await this.words('basis', basisWords);
  }

  private async chip(field: string, words: string | undefined): Promise<void> {
    if (words !== undefined) {
      await chooseChip(this.scribe, field, words);
    }
  }

  private async words(field: string, words: string | undefined): Promise<void> {
    if (words !== undefined) {
      await putWords(this.scribe, field, words);
    }
  }

  private async number(
    field: string,
    value: number | undefined,
    boxes: { readonly wholeDigits: number; readonly decimals: number },
  ): Promise<void> {
    if (value !== undefined) {
      await putNumber(this.scribe, field, value, boxes);
    }
  }

  private async measure(field: string, measure: Measure | undefined): Promise<void> {
    await this.number(field, measure?.value, HEIGHT);
  }
}

const POINT_ACTS = {
  testPointStarted: 'point-start',
  testPointEnded: 'point-end',
  testPointInterrupted: 'point-interrupt',
  testPointTerminated: 'point-terminate',
} as const;
const SUCTION_ON = { L: 'suction-on-left', R: 'suction-on-right' } as const;
const FLOW_ACTS = { laminarGained: 'gain', laminarLost: 'loss', probesRead: 'probes' } as const;

/** Whether a row of the log begins with a time of day at most so long after an instant. */
function isWithin(words: string, fromMs: number, seconds: number): boolean {
  const times = Array.from({ length: seconds }, (_, second) => clockText(fromMs + second * 1000));
  return times.some((time) => words.startsWith(time));
}
