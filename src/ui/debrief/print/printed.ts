import { flightResults, type FlightResults } from '../../../analysis/flightResults.ts';
import {
  flowUnitOf,
  massUnitOf,
  type FlowUnit,
  type MassUnit,
} from '../../../analysis/sheetUnits.ts';
import { headsOf } from '../../../file/timelineFile.ts';
import { entryId, type EntryId, type EpochMs } from '../../../record/brand.ts';
import { headCode } from '../../../record/headCode.ts';
import { signedVersions, type SignedVersion } from '../../../record/signatures.ts';
import { isoDate } from '../../kit/time.ts';
import type { Desk } from '../context.ts';
import type { OpenItem } from '../sign/openItems.ts';
import { clockWords, ordinalDate } from '../timeWords.ts';

/** What every printed page is made of: the record as it stands, and what names it. */
export interface Printed {
  readonly desk: Desk;
  readonly results: FlightResults;
  readonly openItems: readonly OpenItem[];
  readonly flowUnit: FlowUnit;
  readonly massUnit: MassUnit;
  /** The last signature; null while the log is a draft. */
  readonly version: SignedVersion | null;
  /** Code of the version signed, or of the draft as it stands. */
  readonly code: string;
  /** Time of day on the aircraft time base. */
  readonly clock: (at: EpochMs, by: EntryId) => string;
  readonly title: string;
  readonly build: string;
  readonly printedAt: EpochMs;
}

export function printedOf(
  desk: Desk,
  of: {
    readonly openItems: readonly OpenItem[];
    readonly build: string;
    readonly printedAt: EpochMs;
  },
): Printed {
  const { view } = desk;
  const { state } = view;
  const version = signedVersions(view).at(-1) ?? null;
  const heads = headsOf(desk.journal.entries()).map(({ hash }) => entryId(hash));
  return {
    ...of,
    desk,
    results: flightResults(view),
    flowUnit: flowUnitOf(state.sheet),
    massUnit: massUnitOf(state.sheet),
    version,
    code: version?.code ?? headCode(heads),
    clock: (at, by) => {
      const entry = view.byId(by)?.entry;
      return clockWords(entry === undefined ? at : desk.base.shown(at, entry.rec));
    },
    title: state.title === '' ? 'Untitled flight' : state.title,
  };
}

/** `Signed 2032-06-03 02:40:00Z by scribe, pilot`, or what a draft still has open. */
export function statusWords({ version, openItems, desk }: Printed): string {
  if (version === null) {
    return openItems.length === 1 ? 'Draft, 1 open item' : `Draft, ${openItems.length} open items`;
  }
  const by = desk.view.byId(version.by)?.entry;
  const at = by === undefined ? version.at : desk.base.shown(version.at, by.rec);
  return `Signed ${isoDate(at)} ${clockWords(at)}Z by ${version.signedBy.join(', ')}`;
}

/** What stands at the top of every page. */
export function pageHead({ title, desk, version, code }: Printed): string {
  const { nature, date } = desk.view.state;
  return [
    ...(nature === 'flight' ? [] : [nature.toUpperCase()]),
    title,
    ...(date === null ? [] : [date]),
    `${version === null ? 'draft' : 'signed version'} ${code}`,
  ].join('   ');
}

/** What stands at the foot of every page beside the cautions. */
export function pageFoot({ printedAt, build }: Printed): string {
  return `Printed ${ordinalDate(printedAt)} ${clockWords(printedAt).slice(0, 5)} Z, Kneeline ${build}`;
}

/** A text as a string of CSS: nothing that was typed can end it. */
export function cssString(text: string): string {
  const plain = text.replace(/\p{Cc}/gu, ' ');
  return `"${plain.replace(/[\\"]/g, String.raw`\$&`)}"`;
}
