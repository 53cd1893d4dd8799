import type { Clock, Journal } from '../../journal/journal.ts';
import type { EpochMs } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { KnownKind } from '../../record/kinds.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import { measureWords, numberWords } from '../../record/sheetMeasure.ts';
import { GroundButton } from '../kit/Ground.tsx';
import { hms } from '../kit/time.ts';
import { ClockTable } from './hack/ClockTable.tsx';
import { DeviceCheck } from './device/DeviceCheck.tsx';
import type { DeviceTools } from './device/deviceLines.ts';
import { HackKey } from './hack/HackKey.tsx';
import { Planform } from './wing/Planform.tsx';
import type { Place } from './place.ts';
import { useHackTouch } from './hack/TimeHackPage.tsx';
import type { KeptTexts } from './useKept.ts';
import styles from './Brief.module.css';

const FORMS = [
  { form: 'brief', kind: 'briefHeld', name: 'Brief held' },
  { form: 'calibration', kind: 'calibrationChecked', name: 'Calibration check' },
  { form: 'preflight', kind: 'preflightDone', name: 'Preflight' },
] as const;

/** An open flight before it flies: the tablet, the clocks, the sheet and the wing at one look. */
export function FlightOverview(props: {
  readonly journal: Journal;
  readonly clock: Clock;
  readonly view: FlightView;
  readonly sheet: FlightSheet;
  readonly tools: DeviceTools;
  readonly calibrated: boolean;
  readonly pxPerMm: number;
  readonly ticks: KeptTexts;
  readonly onPlace: (place: Place) => void;
}) {
  const { view, sheet, journal, clock, onPlace } = props;
  const [, setTouch] = useHackTouch(journal);
  return (
    <div className={styles.overview}>
      <DeviceCheck {...props} state={view.state} acceptedAt={lastOf(view, 'briefAccepted')} />
      <div className={styles.right}>
        <section aria-label="Time hack">
          <h2>
            Time hack <span className={styles.count}>{`${view.state.hacks.length} taken`}</span>
          </h2>
          <HackKey
            clock={clock}
            pxPerMm={props.pxPerMm}
            called={null}
            onHack={(stamp) => {
              setTouch(() => stamp);
              onPlace({ at: 'hack' });
            }}
          />
          <ClockTable state={view.state} sheet={sheet} />
        </section>
        <section aria-label="Forms before flight">
          <ul className={styles.before}>
            {FORMS.map(({ form, kind, name }) => {
              const at = lastOf(view, kind);
              return (
                <li key={form}>
                  <GroundButton
                    act={`forms.open=${form}`}
                    onPress={() => onPlace({ at: 'forms', form })}
                  >
                    <b>{name}</b>
                    <br />
                    {at === null ? 'not written yet' : `written ${hms(at)}Z`}
                  </GroundButton>
                </li>
              );
            })}
          </ul>
        </section>
        <SheetSummary sheet={sheet} />
        <section className={styles.wing} aria-label="Wing">
          <h2>
            Wing{' '}
            <span
              className={styles.count}
            >{`${sheet.panels.length} panels, ${sheet.probes.length} probes`}</span>
          </h2>
          <Planform panels={sheet.panels} probes={sheet.probes} plan={sheet.aircraft.planform} />
        </section>
      </div>
    </div>
  );
}

function SheetSummary({ sheet }: { sheet: FlightSheet }) {
  const { condition, limits } = sheet;
  const flows = sheet.instruments.filter((one) => one.quantity === 'fuelFlow');
  const [flow] = flows;
  const both = [limits.joker, limits.bingo].flatMap((limit) =>
    limit === undefined ? [] : [measureWords(limit)],
  );
  const target = sheet.targetReductionFraction;
  const rows: readonly (readonly [string, string])[] = [
    ['Condition', `M ${numberWords(condition.mach)}, ${measureWords(condition.pressureAltitude)}`],
    ['Cards', `${sheet.testCards.length}, revision ${sheet.revision}`],
    ['Baseline', sheet.borrowedBaseline === undefined ? 'nothing borrowed' : 'borrowed elasticity'],
    [
      'Engine map',
      sheet.engineMap === undefined ? 'none' : `${sheet.aircraft.engineCount} engines`,
    ],
    [
      'Target',
      target === undefined
        ? 'none'
        : `${numberWords(Number((target * 100).toPrecision(6)))}\u00a0%`,
    ],
    [
      'Fuel gauges',
      flow === undefined
        ? 'none'
        : `${flows.length}, ${flow.format.wholeDigits} digits, ${flow.unit}`,
    ],
    ['Joker, bingo', both.length === 0 ? 'not given' : both.join(', ')],
    ['Stop words', sheet.stopWords ?? 'not briefed'],
  ];
  return (
    <section aria-label="Flight sheet">
      <h2>
        Flight sheet <span className={styles.count}>{`revision ${sheet.revision}`}</span>
      </h2>
      <dl className={styles.summary}>
        {rows.map(([name, words]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

/** When the newest entry of a kind that stands was written; null when there is none. */
function lastOf(view: FlightView, kind: KnownKind): EpochMs | null {
  const found = view.standing.findLast(
    (one) => one.standing === 'stands' && one.effective.kind === kind,
  );
  return found?.at ?? null;
}
