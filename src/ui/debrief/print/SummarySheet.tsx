import { reviewWords, suspicionWords } from '../../../analysis/words/review.ts';
import { reflyWords } from '../../../analysis/words/points.ts';
import { WINGS } from '../../../record/sheet.ts';
import { figure } from '../../kit/number.ts';
import { findingsByPanel } from '../../../analysis/encounters/surface.ts';
import { laminarShares } from '../panels/laminarTimes.ts';
import { lengthWords } from '../timeWords.ts';
import { custodyOf } from './custody.ts';
import { cut } from './cut.ts';
import { PointChart } from './PointChart.tsx';
import type { Printed } from './printed.ts';
import styles from './Print.module.css';
import { SheetHead } from './SheetHead.tsx';
import { squawksOf } from './squawks.ts';
import { bestOf, callsOf, halfPct, headlineRows, lossWords } from './summaryFacts.ts';
import { shareState } from './wingStates.ts';
import { WingPlan } from './WingPlan.tsx';

const LINES_AT_MOST = 6;
const DOUBTS_AT_MOST = 7;
const WORST_AT_MOST = 3;

/** One page for the morning meeting. What does not fit is counted and stands in the full log. */
export function SummarySheet({ printed }: { readonly printed: Printed }) {
  return (
    <div className={styles.summary}>
      <SheetHead printed={printed} what="Summary" />
      <Headline printed={printed} />
      <section>
        <h2>
          By test point{' '}
          <span>
            % less fuel flow; thick 68 %, thin 95 %; hollow is indicative; broken line is the target
          </span>
        </h2>
        <PointChart printed={printed} />
      </section>
      <Wings printed={printed} />
      <div className={styles.two}>
        <Squawks printed={printed} />
        <Losses printed={printed} />
      </div>
      <div className={styles.two}>
        <Doubts printed={printed} />
        <Samples printed={printed} />
      </div>
      <div className={styles.two}>
        <Refly printed={printed} />
        <Signed printed={printed} />
      </div>
    </div>
  );
}

function Headline({ printed }: { readonly printed: Printed }) {
  const best = bestOf(printed.results.points);
  return (
    <div className={styles.top}>
      <section>
        <h2>Fuel-flow reduction</h2>
        {best === null ? (
          <p className={styles.none}>No point holds a valid reduction.</p>
        ) : (
          <>
            <p className={styles.figure}>
              <b>{figure(100 * best.result.fuel.fraction, 1)}</b>
              <span>%</span>
              <small>± {halfPct(best.result.fuel.interval95)}</small>
            </p>
            <p>
              Gross, 95 %. The most of a finished point: {best.point} r{best.run},{' '}
              {cut(best.setting, 30)}; n = {best.readingsUsed.length} readings.
            </p>
          </>
        )}
      </section>
      <dl>
        {headlineRows(printed).map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

function Wings({ printed }: { readonly printed: Printed }) {
  const { view } = printed.desk;
  const { sheet } = view.state;
  if (sheet === null) return null;
  const shares = laminarShares(view);
  const findings = findingsByPanel(view);
  const worst = sheet.panels
    .flatMap(({ id }) => {
      const share = shares.get(id);
      return share === undefined ? [] : [{ id, fraction: share.fraction }];
    })
    .toSorted((a, b) => a.fraction - b.fraction)
    .slice(0, WORST_AT_MOST);
  return (
    <div className={styles.wings}>
      <section>
        <h2>
          Laminar with suction on <span>% of the time assessed; all air</span>
        </h2>
        <WingPlan
          sheet={sheet}
          label={`Laminar share of ${WINGS.length} wings by panel`}
          stateOf={(panel) => shareState(shares.get(panel)?.fraction)}
          wordsOf={(panel) => {
            const share = shares.get(panel);
            return share === undefined ? '?' : figure(100 * share.fraction, 0);
          }}
          probeOf={null}
        />
      </section>
      <section>
        <h2>Worst panels</h2>
        <table>
          <tbody>
            {worst.map(({ id, fraction }) => (
              <tr key={id}>
                <td>
                  <b>{id}</b>
                </td>
                <td>
                  {figure(100 * fraction, 0)} %;{' '}
                  {cut(findings.get(id)?.words ?? 'not yet inspected', 46)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </div>
  );
}

function More({ of, shown }: { readonly of: number; readonly shown: number }) {
  return of > shown ? <p>And {of - shown} more in the full log.</p> : null;
}

function Squawks({ printed }: { readonly printed: Printed }) {
  const squawks = squawksOf(printed.desk.view);
  return (
    <section>
      <h2>For the ground crew</h2>
      {squawks.length === 0 ? <p>No squawk was raised.</p> : null}
      <table className={styles.brief}>
        <tbody>
          {squawks.slice(0, LINES_AT_MOST).map(({ by, squawk, panels, words, labourH }) => (
            <tr key={by}>
              <td>{cut(squawk, 8)}</td>
              <td>
                <b>{cut(panels.join(' '), 10)}</b>
              </td>
              <td className={styles.wide}>{cut(words, 42)}</td>
              <td className={styles.right}>{labourH === undefined ? '' : `${labourH}\u00a0h`}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <More of={squawks.length} shown={LINES_AT_MOST} />
    </section>
  );
}

/** Both wings of one call in one line. */
function Losses({ printed }: { readonly printed: Printed }) {
  const calls = [...callsOf(printed.results.losses.filter(({ byCommand }) => !byCommand))];
  return (
    <section>
      <h2>
        Flow lost <span>Z; what speaks, and who decided</span>
      </h2>
      {calls.length === 0 ? <p>No loss was called.</p> : null}
      <table className={styles.brief}>
        <tbody>
          {calls.slice(0, LINES_AT_MOST).map(([by, losses]) => (
            <tr key={by}>
              <td>{printed.clock(losses[0].seen.at, by)}</td>
              <td>
                <b>{[...new Set(losses.map(({ wing }) => wing))].join(' ')}</b>
              </td>
              <td className={styles.wide}>{cut(lossWords(losses[0], printed), 44)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <More of={calls.length} shown={LINES_AT_MOST} />
    </section>
  );
}

/** Queried, unconfirmed and open things stand on the first page. */
function Doubts({ printed }: { readonly printed: Printed }) {
  const { openItems, results, version } = printed;
  const addenda = version?.addenda.length ?? 0;
  const doubts = [
    ...(addenda === 0 ? [] : [`${addenda} addenda after the signature are in these numbers`]),
    ...openItems.map(({ words }) => words),
    ...results.suspicions.map((one) => suspicionWords(one)),
    ...results.toReview.map((one) => reviewWords(one)),
  ];
  return (
    <section>
      <h2>Open, and doubts in the data</h2>
      {doubts.length === 0 ? <p>None was found.</p> : null}
      <ul>
        {doubts.slice(0, DOUBTS_AT_MOST).map((words) => (
          <li key={words}>{cut(words, 74)}</li>
        ))}
      </ul>
      <More of={doubts.length} shown={DOUBTS_AT_MOST} />
    </section>
  );
}

function Samples({ printed }: { readonly printed: Printed }) {
  const rows = custodyOf(printed);
  return (
    <section>
      <h2>Samples</h2>
      {rows.length === 0 ? <p>No sample was taken.</p> : null}
      <table className={styles.brief}>
        <tbody>
          {rows.slice(0, LINES_AT_MOST).map((row) => (
            <tr key={row.key}>
              <td>
                <b>{cut(row.sample, 10)}</b>
              </td>
              <td>
                {row.opened}, {row.exposedMs === null ? 'open' : lengthWords(row.exposedMs)}
              </td>
              <td>{cut(row.tiedTo, 18)}</td>
              <td className={styles.wide}>{cut(row.handedTo, 22)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <More of={rows.length} shown={LINES_AT_MOST} />
    </section>
  );
}

function Refly({ printed }: { readonly printed: Printed }) {
  const { complete, planned, refly } = printed.results.completion;
  return (
    <section>
      <h2>Fly again</h2>
      <p>
        {complete} of {planned} cards complete.{' '}
        {refly.length === 0
          ? 'Nothing to fly again.'
          : `${refly.map((one) => `${one.point} ${reflyWords(one)}`).join(', ')}.`}
      </p>
    </section>
  );
}

function Signed({ printed }: { readonly printed: Printed }) {
  const signers = printed.version?.signedBy ?? ['Scribe', 'Pilot'];
  return (
    <section>
      <h2>Signed</h2>
      <div className={styles.signLines}>
        {signers.slice(0, 3).map((who) => (
          <p key={who} className={styles.signLine}>
            {who}
          </p>
        ))}
      </div>
    </section>
  );
}
