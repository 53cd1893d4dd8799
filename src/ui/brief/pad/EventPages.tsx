import { FLIGHT_PHASES, type FlightPhase, type FlightSheet } from '../../../record/sheet.ts';
import { TILES, USUAL_TILE_PAGES } from '../../../record/tiles.ts';
import { PadSide, Ruled } from './PadSide.tsx';
import styles from './Pad.module.css';

const PHASE_WORDS = {
  ground: 'Ground',
  climb: 'Climb',
  cruise: 'Cruise',
  descent: 'Descent',
} as const;
/** Tiles that open something on the tablet and mean nothing on paper. */
const TABLET_ONLY: readonly string[] = ['more', 'desk', 'log', 'cards', 'sketch'];
const LINES = 26;
const LEAVES = 2;

/** The running log: time, what, where, who; the words of the tiles stand beside it. */
export function EventPages({ sheet }: { sheet: FlightSheet }) {
  return Array.from({ length: LEAVES }, (_, leaf) => (
    <PadSide key={leaf} sheet={sheet} title="Events">
      <p>
        UTC, 24 hours, seconds where they matter. A late line says so, with its doubt. Strike once,
        never erase; initials.
      </p>
      <Ruled
        name="Events"
        columns={[
          { head: 'UTC', share: 1.6 },
          { head: '± s', share: 0.7 },
          { head: 'What', share: 3 },
          { head: 'Wing, panel, point', share: 2.2 },
          { head: 'Value, words', share: 3.6 },
          { head: 'Who', share: 1 },
        ]}
        empty={LINES}
      />
      <dl className={styles.words}>
        {FLIGHT_PHASES.map((phase) => (
          <div key={phase}>
            <dt>{PHASE_WORDS[phase]}</dt>
            <dd>{wordsOf(sheet, pageOf(sheet, phase)).join(', ')}</dd>
          </div>
        ))}
      </dl>
    </PadSide>
  ));
}

/** An empty page shows the usual tiles in flight, so paper names them too. */
function pageOf(sheet: FlightSheet, phase: FlightPhase): readonly (string | null)[] {
  const page = sheet.tilePages[phase];
  return page.some((id) => id !== null) ? page : USUAL_TILE_PAGES[phase];
}

function wordsOf(sheet: FlightSheet, page: readonly (string | null)[]): readonly string[] {
  return page.flatMap((id) => {
    if (id === null || TABLET_ONLY.includes(id)) return [];
    const own = sheet.ownTiles.find((tile) => tile.id === id)?.label;
    const renamed = sheet.tileWords?.find((word) => word.tile === id)?.label;
    return own ?? renamed ?? TILES.find((tile) => tile.id === id)?.label ?? [];
  });
}
