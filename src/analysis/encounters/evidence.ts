import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightState, Interval, SuctionChange } from '../../record/flightState.ts';
import type { FlightSheet, Wing } from '../../record/sheet.ts';
import { items } from '../../record/trail.ts';
import { isOutOfTolerance, type AirLook } from './airDepartures.ts';
import { neverLaminar, stretches, stretchesNotLaminar, type SpanRow } from './span.ts';
import { MOISTURE_LINGERS_S } from './watch.ts';
import type { WingLook } from './wingLooks.ts';

/** A suction command this short a time before a loss speaks for it (the order of evidence, a choice). */
const SUCTION_CHANGE_S = 60;
/** Air data further away than this say nothing about a moment (as long as they serve a fuel reading). */
const AIR_DATA_LASTS_S = 300;
/** A wedge spreads from one spot: more of a wing than this is something else (a choice). */
const WEDGE_AT_MOST_FRACTION = 0.5;

/** Candidates in the order in which they are tried. None is a verdict: a person assigns the cause. */
export type Evidence =
  | Candidate<
      'moisture',
      { readonly label: string; readonly sinceEntryS: number; readonly sinceExitS: number | null }
    >
  | Candidate<
      'suctionChange',
      {
        /** Null where the loss itself was said to be by command and no change was written down. */
        readonly beforeS: number | null;
        readonly what: SuctionChange['what'] | null;
        readonly setting: string | null;
        readonly byCommand: boolean;
      }
    >
  | Candidate<'offCondition', { readonly looks: readonly AirLook[] }>
  | Candidate<
      'wedge',
      { readonly stretch: readonly string[]; readonly neverLaminar: readonly string[] }
    >
  | Candidate<'chronic', { readonly probes: readonly ProbeRecord[] }>
  | Candidate<'root', { readonly stretch: readonly string[]; readonly always: boolean }>
  | Candidate<'unexplained', Record<string, never>>;

interface Candidate<Name extends string, Facts> {
  readonly candidate: Name;
  /** `unknown` where the record does not hold what would tell. */
  readonly finding: 'speaks' | 'silent' | 'unknown';
  /** What speaks for it; null unless something does. */
  readonly facts: Facts | null;
  readonly entries: readonly EntryId[];
}

/** How often a probe was turbulent on earlier flights that count. */
export interface ProbeRecord {
  readonly probe: string;
  readonly turbulentFlights: number;
  readonly eligibleFlights: number;
}

/** What the candidates are tried on. */
export interface Tried {
  readonly state: FlightState;
  readonly sheet: FlightSheet;
  readonly wing: Wing;
  readonly at: EpochMs;
  /** The earliest it may have been: before `at` where a reading found it. */
  readonly from: EpochMs;
  readonly byCommand: boolean;
  /** What was lost, or never came. */
  readonly lost: readonly string[];
  /** The wing just after. */
  readonly row: SpanRow;
  readonly looks: readonly WingLook[];
  readonly suctionOnSince: { readonly at: EpochMs; readonly by: EntryId } | null;
  readonly moisture: readonly Interval[];
  readonly air: readonly AirLook[];
  /** Null where no earlier flight was given. */
  readonly earlier: ReadonlyMap<string, ProbeRecord> | null;
}

export function evidenceFor(tried: Tried): readonly Evidence[] {
  const candidates = [
    moistureEvidence(tried),
    suctionEvidence(tried),
    airEvidence(tried),
    wedgeEvidence(tried),
    chronicEvidence(tried),
    rootEvidence(tried),
  ];
  const explained = candidates.some(({ finding }) => finding === 'speaks');
  return [...candidates, explained ? silent('unexplained') : speaks('unexplained', {}, [])];
}

function speaks<const Name extends string, Facts>(
  candidate: Name,
  facts: Facts,
  entries: readonly EntryId[],
): { candidate: Name; finding: 'speaks'; facts: Facts; entries: readonly EntryId[] } {
  return { candidate, finding: 'speaks', facts, entries: [...new Set(entries)] };
}

function silent<const Name extends string>(
  candidate: Name,
): { candidate: Name; finding: 'silent'; facts: null; entries: readonly EntryId[] } {
  return { candidate, finding: 'silent', facts: null, entries: [] };
}

function unknown<const Name extends string>(
  candidate: Name,
): { candidate: Name; finding: 'unknown'; facts: null; entries: readonly EntryId[] } {
  return { candidate, finding: 'unknown', facts: null, entries: [] };
}

function moistureEvidence({ moisture, at, from }: Tried): Evidence {
  const met = moisture.findLast(
    ({ opened, closed }) =>
      opened.at <= at && (closed === null || from - closed.at < MOISTURE_LINGERS_S * 1000),
  );
  if (met === undefined) return silent('moisture');
  const { label, opened, closed } = met;
  const over = closed !== null && closed.at <= at ? closed : null;
  const facts = {
    label,
    sinceEntryS: (at - opened.at) / 1000,
    sinceExitS: over === null ? null : (at - over.at) / 1000,
  };
  return speaks('moisture', facts, over === null ? [opened.by] : [opened.by, over.by]);
}

function suctionEvidence({ state, wing, at, from, byCommand }: Tried): Evidence {
  const change = [...items(state.suctionChanges)].findLast(
    (one) => one.wings.includes(wing) && one.at <= at && from - one.at <= SUCTION_CHANGE_S * 1000,
  );
  if (change === undefined && !byCommand) return silent('suctionChange');
  return speaks(
    'suctionChange',
    {
      beforeS: change === undefined ? null : (at - change.at) / 1000,
      what: change?.what ?? null,
      setting: change?.setting ?? null,
      byCommand,
    },
    change === undefined ? [] : [change.by],
  );
}

/** The nearest look at each field before and after. */
function airEvidence({ air, at }: Tried): Evidence {
  const near = air.filter((look) => Math.abs(look.at - at) <= AIR_DATA_LASTS_S * 1000);
  const nearest = [...new Set(near.map(({ field }) => field))].flatMap((field) => {
    const ofField = near.filter((look) => look.field === field);
    const [before, after] = [
      ofField.findLast((look) => look.at <= at),
      ofField.find((look) => look.at > at),
    ];
    return [before, after].filter((look) => look !== undefined);
  });
  if (nearest.length === 0) return unknown('offCondition');
  const looks = nearest.filter(isOutOfTolerance);
  if (looks.length === 0) return silent('offCondition');
  return speaks(
    'offCondition',
    { looks },
    looks.flatMap(({ by }) => by),
  );
}

function wedgeEvidence({ row, lost, looks, suctionOnSince, at }: Tried): Evidence {
  if (suctionOnSince === null || lost.length === 0) return unknown('wedge');
  const isNever = neverLaminar(looks, row.as, suctionOnSince.at, at);
  const met = stretchesNotLaminar(row).find(
    (stretch) =>
      stretch.length <= WEDGE_AT_MOST_FRACTION * row.order.length &&
      stretch.some((id) => lost.includes(id)) &&
      stretches(stretch, isNever).some((never) => never.length > 1),
  );
  if (met === undefined) return silent('wedge');
  return speaks('wedge', { stretch: met, neverLaminar: met.filter(isNever) }, [suctionOnSince.by]);
}

function chronicEvidence({ earlier, lost, row }: Tried): Evidence {
  if (earlier === null || row.as !== 'probes' || lost.length === 0) return unknown('chronic');
  const records = lost.flatMap((probe) => earlier.get(probe) ?? []);
  if (records.every(({ eligibleFlights }) => eligibleFlights === 0)) return unknown('chronic');
  const probes = records.filter(({ turbulentFlights }) => turbulentFlights > 0);
  return probes.length === 0 ? silent('chronic') : speaks('chronic', { probes }, []);
}

/** An unbroken stretch from the root holds everything that was lost, and something outboard is still laminar. */
function rootEvidence({ row, lost, looks, suctionOnSince, at }: Tried): Evidence {
  const [innermost] = row.order;
  if (innermost === undefined || lost.length === 0) return unknown('root');
  const [stretch = []] = stretches(row.order, (id) => row.states[id] !== 'laminar');
  const fromRoot = stretch[0] === innermost && lost.every((id) => stretch.includes(id));
  if (!fromRoot || stretch.length === row.order.length) return silent('root');
  const isNever =
    suctionOnSince === null ? () => false : neverLaminar(looks, row.as, suctionOnSince.at, at);
  return speaks('root', { stretch, always: isNever(innermost) }, []);
}
