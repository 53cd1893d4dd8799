import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { FlightState, Run } from '../../record/flightState.ts';
import { WINGS, type FlightSheet, type TestCard, type Wing } from '../../record/sheet.ts';
import { items } from '../../record/trail.ts';

/** Suction of one wing from one moment on. */
interface Held {
  readonly at: EpochMs;
  readonly by: EntryId;
  readonly on: boolean;
  /** What the crew called it, by region; empty where nobody said. */
  readonly words: string;
}

/** What suction was doing at any moment of the flight. */
export interface Settings {
  readonly sheet: FlightSheet;
  readonly wings: Readonly<Record<Wing, readonly Held[]>>;
}

export interface SettingNow {
  readonly on: boolean;
  /** The same words on both wings once, else left and right; empty where nobody said. */
  readonly words: string;
  /** The changes that made it so. */
  readonly entries: readonly EntryId[];
}

export function settingsOf(state: FlightState, sheet: FlightSheet): Settings {
  const wings: Record<Wing, Held[]> = { L: [], R: [] };
  const regions: Record<Wing, Map<string, string>> = { L: new Map(), R: new Map() };
  for (const change of items(state.suctionChanges)) {
    const { at, by, what, setting, region } = change;
    for (const wing of change.wings) {
      const now = regions[wing];
      if (region === null && (what !== 'changed' || setting !== null)) now.clear();
      if (what === 'off') now.delete(region ?? '');
      // A change that nobody named makes a setting of its own, equal to no other.
      else now.set(region ?? '', setting ?? (what === 'changed' ? `unnamed ${by}` : ''));
      const wasOn = wings[wing].at(-1)?.on ?? false;
      const on = what === 'on' || (what === 'changed' ? wasOn : now.size > 0);
      wings[wing].push({ at, by, on, words: wordsOf(now) });
    }
  }
  return { sheet, wings };
}

export function settingAt(settings: Settings, at: EpochMs): SettingNow {
  const held = WINGS.map((wing) => settings.wings[wing].findLast((change) => change.at <= at));
  const [left = '', right = ''] = held.map((change) => (change?.on ? change.words : ''));
  return {
    on: held.some((change) => change?.on),
    words: left === right ? left : `${left} | ${right}`,
    entries: [...new Set(held.flatMap((change) => (change === undefined ? [] : [change.by])))],
  };
}

export function isSuctionOn({ wings }: Settings, wing: Wing, at: EpochMs): boolean {
  return wings[wing].findLast((change) => change.at <= at)?.on ?? false;
}

/** The moment from which this wing's suction has been on without a break; null while it is off. */
export function suctionOnSince(
  { wings }: Settings,
  wing: Wing,
  at: EpochMs,
): { readonly at: EpochMs; readonly by: EntryId } | null {
  const before = wings[wing].filter((change) => change.at <= at);
  const lastOff = before.findLastIndex(({ on }) => !on);
  return before[lastOff + 1] ?? null;
}

/**
 * The setting of a run in the words of the cards where the crew's words are those of a card, else of the run's own
 * card, else as the crew said it.
 */
export function settingOfRun(settings: Settings, run: Run): string {
  const { words } = settingAt(settings, run.started.at);
  const cards = onCards(settings.sheet);
  const named = cards.find(({ setting }) => isSameSetting(setting, words));
  const own = cards.find(({ id }) => id === run.point);
  return named?.setting ?? own?.setting ?? words;
}

export function isSuctionOnRun(settings: Settings, run: Run): boolean {
  const card = settings.sheet.testCards.find(({ id }) => id === run.point);
  return card === undefined ? settingAt(settings, run.started.at).on : card.suction === 'on';
}

/**
 * The setting that most suction-on cards ask for; of those asked for equally often, the one flown first by the order of
 * the cards. It is what flights are compared at, and no word of it is built in.
 */
export function nominalSetting(sheet: FlightSheet): string | null {
  const counts = new Map<string, number>();
  for (const { setting } of onCards(sheet)) {
    counts.set(plain(setting), (counts.get(plain(setting)) ?? 0) + 1);
  }
  const most = Math.max(0, ...counts.values());
  return onCards(sheet).find(({ setting }) => counts.get(plain(setting)) === most)?.setting ?? null;
}

export function isSameSetting(one: string, other: string): boolean {
  return plain(one) === plain(other);
}

function onCards({ testCards }: FlightSheet): readonly TestCard[] {
  return testCards
    .filter(({ suction }) => suction === 'on')
    .sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1));
}

function plain(words: string): string {
  return words.trim().toLowerCase().replaceAll(/\s+/g, ' ');
}

function wordsOf(regions: ReadonlyMap<string, string>): string {
  return [...regions]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([region, words]) => [region, words].filter((part) => part !== '').join(' '))
    .filter((part) => part !== '')
    .join(', ');
}
