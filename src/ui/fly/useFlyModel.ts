import { useCallback, useMemo, useRef } from 'react';
import { nextCard } from '../../analysis/cards.ts';
import type { Clock, Journal } from '../../journal/journal.ts';
import type { EntryId, EpochMs } from '../../record/brand.ts';
import type { Draft, Entry, Stamp } from '../../record/entry.ts';
import { wingOfRole } from '../../record/roles.ts';
import { screenMm, useWindowPx } from '../kit/mm.ts';
import { useSettings, type SettingsStore } from '../kit/settings.ts';
import { useFlight } from '../useFlight.ts';
import type { Scene } from './act.ts';
import { amendmentOf } from './amend.ts';
import { browserCues, type Cues } from './cues.ts';
import type { Change } from './field.ts';
import { flyLayout } from './layout.ts';
import type { Fly, FlyWays } from './flyContext.ts';
import { useKeptUi } from './useKeptUi.ts';

const NOT_KNOWN = (): boolean => false;

/** Everything that the parts of Fly share. */
export function useFlyModel(given: {
  readonly journal: Journal;
  readonly clock: Clock;
  readonly settings: SettingsStore;
  readonly leave: FlyWays;
  readonly awake?: (() => boolean) | undefined;
  readonly cues?: Cues | undefined;
}): Fly {
  const { journal, clock, leave } = given;
  const { view, status } = useFlight(journal);
  const settings = useSettings(given.settings);
  const { widthPx, heightPx } = useWindowPx();
  const [ui, move] = useKeptUi(journal, clock);
  const layout = useMemo(
    () =>
      flyLayout(screenMm(widthPx, heightPx, settings.pxPerMm), settings.hand, settings.textSize),
    [widthPx, heightPx, settings.pxPerMm, settings.hand, settings.textSize],
  );
  const proposed = useMemo(() => nextCard(view)?.point ?? null, [view]);
  const nextPoint = ui.chosenPoint ?? proposed;

  const { role } = journal.author();
  const wing = wingOfRole(role);

  const sceneAt = useCallback(
    (at: EpochMs): Scene => ({
      view,
      state: view.state,
      sheet: view.state.sheet,
      nextPoint,
      wing,
      at,
    }),
    [view, nextPoint, wing],
  );
  const ownCues = useRef<Cues | null>(given.cues ?? null);
  const { sound, pulse } = settings;
  const append = useCallback(
    async (draft: Draft): Promise<Entry | null> => {
      let saved: Entry;
      try {
        saved = await journal.append(draft);
      } catch {
        // The only refusal: this window may not write. Whatever the disk does, the entry is kept and tried again.
        move({ do: 'notice', words: 'Not saved. This window only reads.', at: clock.now() });
        return null;
      }
      if (sound || pulse) {
        ownCues.current ??= browserCues();
        if (sound) ownCues.current.tick();
        if (pulse) ownCues.current.pulse();
      }
      return saved;
    },
    [journal, clock, move, sound, pulse],
  );
  const caution = useCallback((): void => {
    if (sound) {
      ownCues.current ??= browserCues();
      ownCues.current.caution();
    }
  }, [sound]);
  const amend = useCallback(
    async (target: EntryId, changes: readonly Change[], stamp: Stamp): Promise<Entry | null> => {
      const draft = amendmentOf(view, target, changes, { stamp });
      return draft === null ? null : append(draft);
    },
    [view, append],
  );
  return {
    journal,
    clock,
    view,
    state: view.state,
    sheet: view.state.sheet,
    role,
    wing,
    status,
    layout,
    settings,
    setSettings: given.settings.set,
    ui,
    move,
    sceneAt,
    append,
    amend,
    caution,
    leave,
    awake: given.awake ?? NOT_KNOWN,
  };
}
