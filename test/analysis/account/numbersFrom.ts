import type { Sentence } from '../../../src/analysis/account/sentence.ts';
import { masterTimeOf } from '../../../src/analysis/clocks.ts';
import type { FlightResults } from '../../../src/analysis/flightResults.ts';
import { flowIn, flowUnitOf, massIn, massUnitOf } from '../../../src/analysis/sheetUnits.ts';
import type { FlightView } from '../../../src/record/flight.ts';

/** Numbers of a sentence that are the account's own: what people wrote stands between quotation marks. */
export function numbersSaid(text: string): readonly string[] {
  const own = text.replace(/“[^”]*”/g, '').replace(/(\d)\u00a0(?=\d{3}(?!\d))/g, '$1');
  return own.match(/\d+(?:\.\d+)?/g) ?? [];
}

/** Every number that a sentence may hold: from its entries, their times, and the results that rest on one of them. */
export function numbersKnown(
  { entries }: Sentence,
  view: FlightView,
  results: FlightResults,
): ReadonlySet<string> {
  const known = new Set<string>();
  const take = (text: string): void => {
    for (const digits of text.match(/\d+(?:\.\d+)?/g) ?? []) known.add(digits);
  };
  const cited = entries.flatMap((id) => view.byId(id) ?? []);
  const times = cited.map(({ at, entry }) => ({
    at,
    shown: masterTimeOf(results.clocks.fits, entry.rec, at),
  }));
  for (const { effective } of cited) {
    if (effective.kind !== 'unrecognised') {
      take(JSON.stringify(effective.body));
      // How many there are of what a body lists.
      for (const part of Object.values(effective.body)) {
        if (Array.isArray(part)) known.add(String(part.length));
      }
    }
  }
  for (const { shown } of times)
    take(new Date(Math.round(shown / 1000) * 1000).toISOString().slice(11, 19));
  for (const one of times) {
    for (const other of times) {
      const seconds = Math.round(Math.abs(one.at - other.at) / 1000);
      for (const part of [
        Math.floor(seconds / 3600),
        Math.floor(seconds / 60) % 60,
        seconds % 60,
      ]) {
        known.add(String(part));
      }
    }
  }
  for (let count = 0; count <= cited.length; count += 1) known.add(String(count));
  const { points, encounters, losses, suctionSpans, completion } = results;
  const ids = new Set<string>(entries);
  const about = [
    ...points.map((result) => ({ result, by: result.entries[0] })),
    ...encounters.map((result) => ({ result, by: result.entry.by })),
    ...losses.map((result) => ({ result, by: result.seen.by })),
    ...suctionSpans.map((result) => ({
      result,
      by: result.saving.kind === 'answer' ? result.saving.how.entries[0] : undefined,
    })),
  ];
  for (const { result, by } of about) {
    if (by !== undefined && ids.has(by)) takeResult(result, view, known);
  }
  takeResult({ complete: completion.complete, planned: completion.planned }, view, known);
  for (const { point } of completion.refly) take(point);
  return known;
}

function takeResult(result: unknown, view: FlightView, known: Set<string>): void {
  if (typeof result === 'string') {
    // Names of points, probes and settings; the hash of an entry tells no number.
    if (!/^[0-9a-f]{64}$/.test(result)) {
      for (const digits of result.match(/\d+(?:\.\d+)?/g) ?? []) known.add(digits);
    }
  } else if (typeof result === 'number') {
    const { sheet } = view.state;
    const flow = flowIn(flowUnitOf(sheet), result);
    const mass = massIn(massUnitOf(sheet), result);
    for (const words of [
      (100 * result).toFixed(1),
      result.toFixed(0),
      String(result),
      flow.toFixed(0),
      mass.toFixed(0),
    ]) {
      known.add(words.replace('-', ''));
    }
  } else if (typeof result === 'object' && result !== null) {
    if ('kg' in result && 'fraction' in result && 'interval95' in result) takeShares(result, known);
    for (const part of Object.values(result)) takeResult(part, view, known);
  }
}

/** The interval of a saving as shares of what would have been burnt, which the result gives in kilograms. */
function takeShares(
  figure: { readonly kg: unknown; readonly fraction: unknown; readonly interval95: unknown },
  known: Set<string>,
): void {
  const { low, high } = Object(figure.interval95);
  for (const end of [low, high]) {
    known.add(
      Math.abs((100 * Number(end) * Number(figure.fraction)) / Number(figure.kg)).toFixed(1),
    );
  }
}
