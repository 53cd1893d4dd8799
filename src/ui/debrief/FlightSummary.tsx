import type { PointResult } from '../../analysis/results.ts';
import { items } from '../../record/trail.ts';
import { GroundButton } from '../kit/Ground.tsx';
import type { EntryId } from '../../record/brand.ts';
import type { Desk } from './context.ts';
import styles from './Debrief.module.css';
import { reductionWords } from './points/pointWords.ts';
import type { OpenItem } from './sign/openItems.ts';
import { clockWords, spokenLength } from './timeWords.ts';
import { shownTimeOf } from './timeline/spans.ts';

const ITEMS_AT_MOST = 8;

/** What the flight came to, while no entry is selected: its span, its best point, and what is still open. */
export function FlightSummary(props: {
  readonly desk: Desk;
  readonly points: readonly PointResult[];
  readonly openItems: readonly OpenItem[];
  readonly onOpen: (entry: EntryId) => void;
}) {
  const { desk, points, openItems } = props;
  const { view } = desk;
  const shown = shownTimeOf(view, desk.base);
  const { liftOff, touchdown } = view.state.milestones;
  const numbered = points.filter(({ result }) => result.kind === 'valid');
  const best = numbered.toSorted((a, b) => fractionOf(b) - fractionOf(a))[0];
  const moistureMs = [...items(view.state.intervals)]
    .filter(({ kind, closed }) => kind === 'moisture' && closed !== null)
    .reduce((total, { opened, closed }) => total + ((closed?.at ?? opened.at) - opened.at), 0);
  return (
    <section className={styles.summary} aria-label="The flight so far">
      <h2>{view.state.title === '' ? 'This flight' : view.state.title}</h2>
      <dl>
        <dt>Airborne</dt>
        <dd>
          {liftOff === undefined ? 'no lift-off marked' : `${clockWords(shown(liftOff))}Z`}
          {liftOff === undefined || touchdown === undefined
            ? ''
            : ` to ${clockWords(shown(touchdown))}Z, ${spokenLength(60_000 * Math.round((touchdown.at - liftOff.at) / 60_000))}`}
        </dd>
        <dt>Points</dt>
        <dd>
          {points.length} runs, {numbered.length} with a number
        </dd>
        <dt>Most</dt>
        <dd>
          {best === undefined || best.result.kind !== 'valid'
            ? 'no reduction yet'
            : `${best.point} r${best.run}: ${reductionWords(best.result.fuel)} % fuel flow`}
        </dd>
        <dt>In moisture</dt>
        <dd>{spokenLength(moistureMs)}</dd>
      </dl>
      <h3>{openItems.length === 0 ? 'Nothing is open' : `${openItems.length} open`}</h3>
      <ol>
        {openItems.slice(0, ITEMS_AT_MOST).map(({ words, entry }) => (
          <li key={`${words} ${entry ?? ''}`}>
            <span>{words}</span>
            {entry === null ? null : (
              <GroundButton act="summary-open" onPress={() => props.onOpen(entry)}>
                Open
              </GroundButton>
            )}
          </li>
        ))}
      </ol>
      {openItems.length > ITEMS_AT_MOST ? <p>The rest stands on Sign.</p> : null}
      <p className={styles.hint}>
        Touch a mark or a row: what was read, and what was done to it, stands here.
      </p>
    </section>
  );
}

function fractionOf({ result }: PointResult): number {
  return result.kind === 'valid' ? result.fuel.fraction : Number.NEGATIVE_INFINITY;
}
