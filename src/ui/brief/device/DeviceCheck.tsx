import { useEffect, useState } from 'react';
import type { Clock, Journal } from '../../../journal/journal.ts';
import type { FlightState } from '../../../record/flightState.ts';
import { hms } from '../../kit/time.ts';
import { HoldKey, TouchSurface } from '../../kit/TouchSurface.tsx';
import { CAUTIONS } from './cautions.ts';
import { machineLines, type DeviceLine, type DeviceTools } from './deviceLines.ts';
import { useWrite } from '../forms/forms.ts';
import type { Place } from '../place.ts';
import type { KeptTexts } from '../useKept.ts';
import type { EpochMs } from '../../../record/brand.ts';
import styles from '../Brief.module.css';

interface DeviceCheckProps {
  readonly journal: Journal;
  readonly clock: Clock;
  readonly state: FlightState;
  readonly tools: DeviceTools;
  readonly calibrated: boolean;
  readonly pxPerMm: number;
  readonly ticks: KeptTexts;
  readonly acceptedAt: EpochMs | null;
  readonly onPlace: (place: Place) => void;
}

/** The tablet, line by line. A filled square was earned; an open line names its risk and stops nobody. */
export function DeviceCheck(props: DeviceCheckProps) {
  const { tools, clock, ticks, onPlace } = props;
  const [found, setFound] = useState<readonly DeviceLine[] | null>(null);
  const [run, setRun] = useState(0);
  const { write, refused } = useWrite(props.journal);
  useEffect(() => {
    let wanted = true;
    void machineLines(tools, clock.now()).then((lines) => {
      if (wanted) {
        setFound(lines);
      }
    });
    return () => {
      wanted = false;
    };
  }, [tools, clock, run]);
  const lines = [...(found ?? []), ...personLines(props)];
  const open = lines.filter((line) => !line.held);
  const touchLine = (line: DeviceLine) => {
    if (line.id === 'kept') {
      void tools.keepStorage().then(() => setRun(run + 1));
    } else if (line.id === 'hack' || line.id === 'size' || line.id === 'cautions') {
      onPlace({ at: line.id });
    } else if (PERSON.some((person) => person.id === line.id)) {
      ticks.put(`line-${line.id}`, line.held ? '' : 'yes');
    } else {
      setRun(run + 1);
    }
  };
  return (
    <section className={styles.device} aria-label="This tablet">
      <h2>
        This tablet{' '}
        <span className={styles.count}>
          {found === null ? 'checking' : `${lines.length - open.length} of ${lines.length}`}
        </span>
      </h2>
      <div className={styles.meter} aria-hidden="true">
        {lines.map((line) => (
          <span key={line.id} className={line.held ? styles.earned : undefined} />
        ))}
      </div>
      <ul className={styles.lines}>
        {lines.map((line) => (
          <li key={line.id}>
            <CheckLine line={line} onTouch={() => touchLine(line)} />
          </li>
        ))}
      </ul>
      <div className={styles.accept}>
        <p>
          {props.acceptedAt === null
            ? 'Touch an open line to run it. Fly opens whatever is open.'
            : `Accepted ${hms(props.acceptedAt)}Z.`}
        </p>
        <TouchSurface clock={clock} pxPerMm={props.pxPerMm} onIgnored={() => undefined}>
          <HoldKey
            act="accept"
            className={styles.acceptKey}
            onTouch={(touch) =>
              write({
                kind: 'briefAccepted',
                stamp: touch.stamp,
                body: { openLines: open.map((line) => line.name) },
              })
            }
          >
            <b>Hold to accept</b>
            <span>{open.length === 0 ? 'no line open' : `${open.length} open`}</span>
          </HoldKey>
        </TouchSurface>
      </div>
      {refused === null ? null : <b role="alert">{refused}</b>}
    </section>
  );
}

function CheckLine({ line, onTouch }: { line: DeviceLine; onTouch: () => void }) {
  const isTick = PERSON.some((person) => person.id === line.id);
  const inner = (
    <>
      <span className={styles.square} aria-hidden="true" />
      <span className={styles.lineName}>{line.name}</span>
      <span className={styles.result}>{line.result}</span>
      {line.held ? null : <span className={styles.risk}>{line.risk}</span>}
    </>
  );
  return line.held && !isTick ? (
    <div className={`${styles.line} ${styles.held}`}>{inner}</div>
  ) : (
    <button
      type="button"
      data-act={`check=${line.id}`}
      aria-pressed={isTick ? line.held : undefined}
      className={line.held ? `${styles.line} ${styles.held}` : styles.line}
      onClick={onTouch}
    >
      {inner}
    </button>
  );
}

/** Lines that only a person can answer for. */
const PERSON = [
  {
    id: 'transmitters',
    name: 'Transmitters off',
    held: 'seen',
    risk: 'Touch when flight mode is set.',
  },
  {
    id: 'copied',
    name: 'Previous flight copied',
    held: 'seen',
    risk: 'This may be its only copy. Touch when seen.',
  },
] as const;

function personLines(props: DeviceCheckProps): readonly DeviceLine[] {
  const { ticks, state, calibrated } = props;
  const agreed = CAUTIONS.filter((caution) => ticks.of(caution.id) === 'yes').length;
  return [
    ...PERSON.map((person) => {
      const held = ticks.of(`line-${person.id}`) === 'yes';
      const online = person.id === 'transmitters' && navigator.onLine;
      return {
        id: person.id,
        name: person.name,
        held,
        result: held ? person.held : online ? 'a network is seen' : 'not said',
        risk: person.risk,
      };
    }),
    {
      id: 'size',
      name: 'Size set by bank card',
      held: calibrated,
      result: calibrated ? `${props.pxPerMm.toFixed(2)}\u00a0px/mm` : 'a guess',
      risk: 'Keys may be too small. Touch to set.',
    },
    {
      id: 'cautions',
      name: 'Read and agreed',
      held: agreed === CAUTIONS.length,
      result: `${agreed} of ${CAUTIONS.length}`,
      risk: 'Approval, stowing, heat. Touch to read.',
    },
    {
      id: 'hack',
      name: 'Clock against master',
      held: state.hacks.length > 0,
      result: state.hacks.length > 0 ? `${state.hacks.length} taken` : 'not yet',
      risk: 'Times cannot be tied to the recorder.',
    },
  ];
}
