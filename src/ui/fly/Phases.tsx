import { FLIGHT_PHASES, type FlightPhase } from '../../record/sheet.ts';
import { nextOf, THEMES, THEME_WORDS } from '../kit/settings.ts';
import { TouchKey } from '../kit/TouchSurface.tsx';
import { useFly } from './flyContext.ts';
import styles from './Phases.module.css';

const PHASE_WORDS: Readonly<Record<FlightPhase, string>> = {
  ground: 'Ground',
  climb: 'Climb',
  cruise: 'Cruise',
  descent: 'Descent',
};

/** The page of tiles, chosen by the scribe and never by the app. */
export function Phases() {
  const { state, append, layout } = useFly();
  return (
    <nav
      className={styles.phases}
      style={{ gridTemplateColumns: `repeat(${layout.phaseColumns}, minmax(0, 1fr))` }}
    >
      {FLIGHT_PHASES.map((phase) => (
        <TouchKey
          key={phase}
          act={`phase-${phase}`}
          className={state.phase === phase ? `${styles.phase} ${styles.chosen}` : styles.phase}
          pressed={state.phase === phase}
          onTouch={({ stamp }) => {
            if (phase !== state.phase) {
              void append({ kind: 'phaseChosen', body: { phase }, stamp });
            }
          }}
        >
          {PHASE_WORDS[phase]}
        </TouchKey>
      ))}
    </nav>
  );
}

/** The one fixed control of the theme. */
export function ThemeKey() {
  const { settings, setSettings } = useFly();
  const [name, sort = 'Theme'] = THEME_WORDS[settings.theme].split(' ');
  return (
    <TouchKey
      act="theme"
      className={styles.theme}
      onTouch={() => setSettings({ theme: nextOf(THEMES, settings.theme) })}
    >
      <b>{name}</b>
      <span>{sort}</span>
    </TouchKey>
  );
}
