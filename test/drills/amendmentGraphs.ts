import { entryId, type EntryId } from '../../src/record/brand.ts';
import type { Amendment } from '../../src/record/amend.ts';
import type { Entry } from '../../src/record/entry.ts';
import { startFlight } from '../../src/record/flight.ts';
import { chained, REC_A, REC_B, type Said } from '../record/writing.ts';
import { chanceOf, type Chance } from '../simulation/chance.ts';
import { gathered, type DrillSeen } from './seen.ts';

const AS_READ = 910;
const NOWHERE = '0'.repeat(64);
/** Orders of arrival that are tried with each graph. */
const ARRIVALS = 6;

/**
 * Corrections of one reading by two recorders who know each other's corrections or do not, corrections withdrawn, their
 * withdrawals withdrawn, corrections of what never came, and now and then two that claim to replace each other, which
 * no hash allows. What the reading stands at is worked out a second way, from the rules alone.
 */
export function amendmentGraphs(rounds: number, seed: number): DrillSeen {
  return gathered('amendment graphs', rounds, (round) => {
    const chance = chanceOf(seed, round);
    const graph = graphOf(chance);
    const expected = JSON.stringify(byTheRules(graph));
    const broken: string[] = [];
    for (let arrival = 0; arrival < ARRIVALS; arrival += 1) {
      const found = JSON.stringify(folded(graph, chance));
      if (found !== expected) broken.push(`${found}, by the rules ${expected}`);
    }
    return { faults: ARRIVALS, lost: broken.length, broken };
  });
}

function graphOf(chance: Chance): readonly Entry[] {
  const reading = { readings: [{ instrument: 'FF2', value: AS_READ, unit: 'lb/h' }] };
  const [base] = chained([{ kind: 'fuelRead', body: reading }]);
  if (base === undefined) throw new RangeError('there must be a reading');
  const graph: Entry[] = [base];
  for (let left = chance.whole(2, 10); left > 0; left -= 1) {
    const rec = chance.oneOf([REC_A, REC_B]);
    const head = graph.findLast((entry) => entry.rec === rec) ?? null;
    // Clocks may go back: what replaces another may have the lower order key.
    const afterMs = chance.whole(1, 40) * 1_000;
    graph.push(...chained([{ ...saidAbout(graph, base, chance), afterMs }], { rec, head }));
  }
  return chance.happens(0.1) ? withCycle(graph) : graph;
}

function saidAbout(graph: readonly Entry[], base: Entry, chance: Chance): Said {
  const any = graph[chance.whole(0, graph.length - 1)] ?? base;
  if (chance.happens(0.3)) {
    return { kind: 'entryWithdrawn', body: { target: any.id, reason: '' } };
  }
  const target = chance.happens(0.85) ? base.id : chance.oneOf([any.id, NOWHERE]);
  const known = graph.filter((one) => isAmendment(one) && chance.happens(0.5)).map(({ id }) => id);
  const value = chance.oneOf([111, 222, 333]);
  return {
    kind: 'entryAmended',
    body: {
      target,
      replaces: chance.happens(0.1) ? [...known, NOWHERE] : known,
      changes: [{ field: 'readings.FF2.value', old: AS_READ, new: value }],
      code: 'misKeyed',
      reason: '',
    },
  };
}

/** The newest two corrections claim to replace each other: one is given a name that is not its hash. */
function withCycle(graph: readonly Entry[]): readonly Entry[] {
  const head = graph.findLast(({ rec }) => rec === REC_A) ?? null;
  const forged = entryId('c'.repeat(64));
  const amending = (replaces: readonly EntryId[], value: number): Said => ({
    kind: 'entryAmended',
    body: {
      target: graph[0]?.id,
      replaces,
      changes: [{ field: 'readings.FF2.value', old: AS_READ, new: value }],
      code: 'misKeyed',
      reason: '',
    },
  });
  const [first] = chained([amending([forged], 444)], { head });
  if (first === undefined) return graph;
  const [second] = chained([amending([first.id], 555)], { head: first });
  return second === undefined ? graph : [...graph, first, { ...second, id: forged }];
}

const isAmendment = (entry: Entry): entry is Amendment => entry.kind === 'entryAmended';

interface Result {
  readonly withdrawn: boolean;
  readonly value: number;
  readonly inDispute: boolean;
  readonly amendedBy: readonly EntryId[];
}

function folded(graph: readonly Entry[], chance: Chance): Result {
  const [base] = graph;
  const flight = startFlight();
  const left = [...graph];
  while (left.length > 0) {
    const portion = Array.from({ length: chance.whole(1, 4) }, () =>
      left.splice(chance.whole(0, Math.max(0, left.length - 1)), 1),
    );
    flight.add(portion.flat());
  }
  const stands = base && flight.view().byId(base.id);
  if (stands?.effective.kind !== 'fuelRead') throw new RangeError('the reading must stand');
  const reading = stands.effective.body.readings?.[0];
  return {
    withdrawn: stands.standing === 'withdrawn',
    value: reading !== undefined && 'value' in reading ? reading.value : Number.NaN,
    inDispute: stands.conflicts.length > 0,
    amendedBy: stands.amendedBy,
  };
}

/** The rules, taken at their word: withdrawn by what stands; corrections after what they replace, else as written. */
function byTheRules(graph: readonly Entry[]): Result {
  const [base] = graph;
  if (base === undefined) throw new RangeError('there must be a reading');
  const isWithdrawn = (id: EntryId): boolean =>
    graph.some(
      (one) => one.kind === 'entryWithdrawn' && one.body.target === id && !isWithdrawn(one.id),
    );
  const waiting = graph
    .filter((one) => isAmendment(one))
    .filter((one) => one.body.target === base.id && !isWithdrawn(one.id))
    .sort((a, b) => a.ord - b.ord || (a.rec < b.rec ? -1 : Number(a.rec > b.rec)) || a.seq - b.seq);
  const among = new Map(waiting.map((one) => [one.id, one]));
  const replaced = (one: Amendment, seen = new Set<EntryId>()): ReadonlySet<EntryId> => {
    for (const id of one.body.replaces) {
      const other = among.get(id);
      if (other !== undefined && !seen.has(id)) replaced(other, seen.add(id));
    }
    return seen;
  };
  const superseded = new Set(waiting.flatMap((one) => [...replaced(one)]));
  const values = waiting.filter(({ id }) => !superseded.has(id)).map(valueOf);
  const ordered: Amendment[] = [];
  while (waiting.length > 0) {
    const ready = waiting.findIndex((one) =>
      one.body.replaces.every((id) => !waiting.some((other) => other.id === id)),
    );
    ordered.push(...waiting.splice(Math.max(0, ready), 1));
  }
  const last = ordered.at(-1);
  return {
    withdrawn: isWithdrawn(base.id),
    value: last === undefined ? AS_READ : valueOf(last),
    inDispute: new Set(values).size > 1,
    amendedBy: ordered.map(({ id }) => id),
  };
}

function valueOf({ body }: Amendment): number {
  return Number(body.changes[0]?.new);
}
