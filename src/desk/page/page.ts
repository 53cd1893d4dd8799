import type { FlightResults } from '../../analysis/flightResults.ts';
import type { FlightView } from '../../record/flight.ts';
import { accountSection } from './account.ts';
import { booksSection } from './books.ts';
import { doubtsSection } from './doubts.ts';
import { clocksSection, completionSection, headline } from './flight.ts';
import { encountersSection } from './encounters.ts';
import { savingSection } from './fuel.ts';
import { headed, PAGE_COLUMNS, wrapped } from './layout.ts';
import { labourSection } from './labour.ts';
import { laminarSection } from './laminar.ts';
import { lossesSection } from './losses.ts';
import { paperOf } from './paper.ts';
import { pointsSection } from './points.ts';
import { probesSection } from './probes.ts';

/** What a page says about the record that it was made of. */
export interface MadeFrom {
  readonly files: readonly string[];
  readonly digest: string;
  readonly build: string;
}

/** The page for the morning meeting: what the flight came to, how sure that is, and which entries say so. */
export function pageOf(
  view: FlightView,
  results: FlightResults,
  { files, digest, build }: MadeFrom,
): readonly string[] {
  const paper = paperOf(view, results);
  const { flight } = results;
  const body = [
    ...headline(paper),
    ...pointsSection(paper),
    ...savingSection(paper),
    ...laminarSection(paper),
    ...lossesSection(paper),
    ...encountersSection(paper),
    ...probesSection(paper),
    ...booksSection(paper),
    ...labourSection(paper),
    ...completionSection(paper),
    ...clocksSection(paper),
    ...doubtsSection(paper),
    ...accountSection(paper),
  ];
  const nature = flight.nature === 'flight' ? '' : `  (${flight.nature.toUpperCase()})`;
  return [
    `${flight.title === '' ? 'Untitled flight' : flight.title}${nature}`,
    [flight.date, flight.aircraft, sheetWords(flight)].filter((part) => part !== null).join('  '),
    '='.repeat(PAGE_COLUMNS),
    ...body,
    ...headed('Foot', [
      ...wrapped(
        `Made from ${flight.entryCount} entries of ${files.join(', ')}; fingerprint of the record ${digest.slice(0, 16)}; Kneeline ${build}. ` +
          `${statusWords(flight)} Association is not cause: a person assigns causes.`,
      ),
      ...wrapped(
        'A record, not an instrument: not for flying, navigating, fuel planning or fuel state. The operator’s approval and the ' +
          'test safety plan overrule this page; decisions rest with the test team.',
      ),
    ]),
    ...headed('Entries cited, by number in the record', paper.cited()),
  ];
}

function sheetWords({ sheetRevision }: FlightResults['flight']): string | null {
  return sheetRevision === null ? 'no flight sheet' : `flight sheet revision ${sheetRevision}`;
}

function statusWords({ signed, closed }: FlightResults['flight']): string {
  const [last] = signed.slice(-1);
  if (last !== undefined) return `Signed by ${last.signedBy.join(', ')}.`;
  return closed === null ? 'Draft: the flight is not closed.' : 'Draft: not signed.';
}
