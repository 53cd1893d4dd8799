import { entryWords } from '../../record/lang.ts';
import type { KnownKind } from '../../record/kinds.ts';
import type { StandingEntry } from '../../record/flightState.ts';
import type { FlightSheet } from '../../record/sheet.ts';

/** What an entry says now, in a few words. */
export function entryLabel(standing: StandingEntry, sheet: FlightSheet | null): string {
  return entryWords(standing.effective, sheet);
}

/** The same for the Undo key, where two short lines must do: readings by the figure of the first one. */
export function undoLines(
  standing: StandingEntry,
  sheet: FlightSheet | null,
  letters: number,
): readonly string[] {
  const whole = entryLabel(standing, sheet);
  const lines = twoLines(whole, letters);
  return lines.join(' ') === whole ? lines : twoLines(shortLabel(standing, sheet), letters);
}

function shortLabel(standing: StandingEntry, sheet: FlightSheet | null): string {
  const { effective } = standing;
  const [reading, ...rest] =
    effective.kind === 'unrecognised' ? [] : (effective.body.readings ?? []);
  const isReading =
    effective.kind === 'fuelRead' ||
    effective.kind === 'airDataRead' ||
    effective.kind === 'fuelStateRead';
  if (!isReading || reading === undefined || !('value' in reading)) {
    return entryLabel(standing, sheet);
  }
  const of = rest.length === 0 ? reading.instrument : entryLabel(standing, sheet).split(' ')[0];
  return `${of} ${reading.value}`;
}

/** At most two lines of so many letters, broken between words. The list of last entries says the rest. */
function twoLines(words: string, letters: number): readonly string[] {
  const lines = [''];
  for (const word of words.split(' ')) {
    const last = lines.at(-1) ?? '';
    const longer = last === '' ? word : `${last} ${word}`;
    if (longer.length <= letters || last === '') {
      lines[lines.length - 1] = longer;
    } else {
      lines.push(word);
    }
  }
  return lines
    .slice(0, 2)
    .map((line) => (line.length > letters ? `${line.slice(0, letters - 1)}\u2026` : line));
}

const NOT_EVENTS: ReadonlySet<KnownKind> = new Set<KnownKind>([
  'deviceNoted',
  'positionRead',
  'phaseChosen',
  'reminderShown',
  'reminderAnswered',
  'unconfirmedSettled',
  'entryAmended',
  'headWitnessed',
]);

/** Whether the short list of last entries shows it: events and readings, not the house-keeping. */
export function isShown(standing: StandingEntry): boolean {
  return standing.entry.kind === 'unrecognised' || !NOT_EVENTS.has(standing.entry.kind);
}
