import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightState } from '../../record/flightState.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import { items } from '../../record/trail.ts';
import { correctedReading, displayUncertaintySi, instrumentsFor } from '../calibrate.ts';
import type { FuelGate } from './balanceResults.ts';
import { emptyLedger, type Booked, type Ledger } from './ledgers.ts';
import type { GroundFuel, Uplift } from './upliftLog.ts';

/** All tanks in one look; on the ground at the real time, in `counted` where the engines make it count. */
export interface TankLook {
  readonly at: EpochMs;
  readonly kg: number;
  readonly standardUncertaintyKg: number;
  readonly by: readonly EntryId[];
  readonly isGauged: boolean;
}

/** Looks at all tank gauges together, in order of time; one tank left out is no total. */
export function tankLooks(state: FlightState, sheet: FlightSheet): readonly TankLook[] {
  const gauges = instrumentsFor(sheet, 'tankFuel').filter(({ serviceable }) => serviceable);
  const looks: TankLook[] = [];
  for (const glance of gauges.length === 0 ? [] : items(state.glances)) {
    const read = gauges.flatMap((gauge) => {
      const reading = glance.readings[gauge.id];
      const corrected = reading === undefined ? null : correctedReading(gauge, reading);
      return corrected?.kind === 'corrected' ? [corrected] : [];
    });
    if (read.length < gauges.length) continue;
    looks.push({
      at: glance.at,
      kg: read.reduce((total, { valueSi }) => total + valueSi, 0),
      standardUncertaintyKg: Math.hypot(...read.map(({ parts }) => displayUncertaintySi(parts))),
      by: glance.by,
      isGauged: true,
    });
  }
  return looks.sort((a, b) => a.at - b.at);
}

/** What was in the tanks when the engines started: by gauge, else as the preflight record or the flight sheet has it. */
export function startLook(looks: readonly TankLook[], ground: GroundFuel): TankLook | null {
  const { enginesFrom, loaded } = ground;
  const before = looks.findLast(({ at }) => enginesFrom !== null && at <= enginesFrom);
  if (before !== undefined) return before;
  if (loaded === null || (enginesFrom !== null && loaded.at > enginesFrom)) return null;
  // It was read off the same tanks, by whatever means: the gauges' own doubt stands in for one that nobody stated.
  const doubts = looks.map(({ standardUncertaintyKg }) => standardUncertaintyKg);
  return { ...loaded, standardUncertaintyKg: Math.max(0, ...doubts), isGauged: false };
}

/** Tank drop: what was there, and came in, less what is left. */
export function tankLedger(looks: readonly TankLook[], ground: GroundFuel): Ledger {
  const flown = looksOfFlight(looks, ground);
  const [first] = flown;
  const last = flown.at(-1);
  if (first === undefined || last === undefined || last.counts <= first.counts) {
    return emptyLedger(
      'tanks',
      'tanksNotRead',
      looks.flatMap(({ by }) => by),
    );
  }
  const between = (from: EpochMs, to: EpochMs): Booked | null => {
    const start = flown.find(({ counts }) => counts === from);
    const end = flown.findLast(({ counts }) => counts === to);
    return start === undefined || end === undefined
      ? null
      : dropBetween(start.look, end.look, ground.uplifts);
  };
  const whole = between(first.counts, last.counts);
  if (whole === null)
    return emptyLedger(
      'tanks',
      'noDensity',
      looks.flatMap(({ by }) => by),
    );
  const { kg, standardUncertaintyKg, by, broken } = whole;
  const [from, to] = [first.counts, last.counts];
  return {
    source: 'tanks',
    used: {
      kind: 'answer',
      value: { from, to, kg, standardUncertaintyKg },
      how: { entries: by, method: 'startLessRest', broken },
    },
    covers: { from, to, marks: flown.map(({ counts }) => counts) },
    between,
  };
}

interface Counted {
  readonly look: TankLook;
  /** The instant whose fuel it tells: nothing burns before the engines start or after they stop. */
  readonly counts: EpochMs;
}

/** The last look before the engines, those in flight, and the first after them. */
function looksOfFlight(looks: readonly TankLook[], ground: GroundFuel): readonly Counted[] {
  const { enginesFrom, enginesTo } = ground;
  const start = startLook(looks, ground);
  const isBefore = ({ at }: TankLook): boolean => enginesFrom !== null && at <= enginesFrom;
  const isAfter = ({ at }: TankLook): boolean => enginesTo !== null && at >= enginesTo;
  const inFlight = looks.filter((look) => !isBefore(look) && !isAfter(look));
  const rest = looks.find((look) => isAfter(look) && !isBefore(look));
  return [
    ...(start === null ? [] : [{ look: start, counts: enginesFrom ?? start.at }]),
    ...inFlight.map((look) => ({ look, counts: look.at })),
    ...(rest === undefined ? [] : [{ look: rest, counts: enginesTo ?? rest.at }]),
  ];
}

/** @returns null where something came in between that has no mass */
export function dropBetween(
  start: TankLook,
  end: TankLook,
  uplifts: readonly Uplift[],
): Booked | null {
  const came = uplifts.filter(({ at }) => at > start.at && at <= end.at);
  let upliftedKg = 0;
  const broken = new Set<FuelGate>();
  for (const { mass } of came) {
    if (mass.kind === 'none') return null;
    upliftedKg += mass.kg;
    mass.broken.forEach((gate) => broken.add(gate));
  }
  if (!start.isGauged) broken.add('startNotGauged');
  return {
    kg: start.kg + upliftedKg - end.kg,
    standardUncertaintyKg: Math.hypot(start.standardUncertaintyKg, end.standardUncertaintyKg),
    by: [...new Set([...start.by, ...end.by, ...came.flatMap(({ by }) => by)])],
    broken: [...broken],
  };
}
