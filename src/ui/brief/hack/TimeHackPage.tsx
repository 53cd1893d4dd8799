import * as v from 'valibot';
import type { Clock, Journal } from '../../../journal/journal.ts';
import { epochMs } from '../../../record/brand.ts';
import type { Stamp } from '../../../record/entry.ts';
import type { FlightState } from '../../../record/flightState.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { useSecond } from '../../kit/time.ts';
import { ClockTable } from './ClockTable.tsx';
import { HackEntry } from './HackEntry.tsx';
import { HackKey } from './HackKey.tsx';
import { calledMinute, clockText, readClock } from './hackTime.ts';
import { TextField } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import { useKept, useKeptTexts } from '../useKept.ts';
import styles from '../Brief.module.css';

/** The touch of a hack that is not written yet; it survives a reload. */
const touchSchema = v.nullable(v.object({ wall: v.number(), mono: v.number(), boot: v.string() }));
const NO_TOUCH: v.InferOutput<typeof touchSchema> = null;

const SCALES = [
  { value: 'UTC', label: 'UTC' },
  { value: 'GPS', label: 'Satellite time' },
  { value: 'unknown', label: 'Nobody knows' },
] as const;

export function useHackTouch(journal: Journal) {
  return useKept(`hack-touch-${journal.flight}`, touchSchema, NO_TOUCH);
}

/** A time hack: one callout, one touch, and then what every clock showed. A second one after landing shows the drift. */
export function TimeHackPage(props: {
  readonly journal: Journal;
  readonly clock: Clock;
  readonly state: FlightState;
  readonly sheet: FlightSheet;
  readonly pxPerMm: number;
}) {
  const { journal, clock, sheet, state } = props;
  const texts = useKeptTexts(`hack-${journal.flight}`);
  const [touch, setTouch] = useHackTouch(journal);
  const now = useSecond(clock);
  const masters = sheet.clocks.filter((one) => one.id !== 'tablet');
  const master =
    masters.find((one) => one.id === texts.of('clock', 'master')) ?? masters[0] ?? null;
  const stamp: Stamp | null = touch === null ? null : { ...touch, wall: epochMs(touch.wall) };
  const called = calledMinute(stamp?.wall ?? now);
  const typed = texts.of('master', clockText(called));
  const masterTime = readClock(typed, stamp?.wall ?? now);
  const scale =
    SCALES.find((one) => one.value === texts.of('scale', master?.scale))?.value ?? 'unknown';
  return (
    <div className={styles.hackPage}>
      <section aria-label="Callout">
        <h2>
          {state.hacks.length === 0 ? 'Time hack' : `Time hack ${state.hacks.length + 1}`}
          <span className={styles.count}>{`${state.hacks.length} taken`}</span>
        </h2>
        <HackKey
          clock={clock}
          pxPerMm={props.pxPerMm}
          called={touch === null ? masterTime : null}
          onHack={(stampOfTouch) => setTouch(() => stampOfTouch)}
        />
        <div className={styles.fields}>
          <TextField
            act="hack.master"
            label="Called time of the master"
            value={typed}
            onChange={(text) => texts.put('master', text)}
            fault={masterTime === null ? 'HH:MM:SS, please.' : null}
          />
          <ChipField
            act="hack.clock"
            label="The master is"
            value={master?.id ?? null}
            choices={masters.map((one) => ({ value: one.id, label: one.owner || one.id }))}
            onChange={(id) => texts.put('clock', id)}
          />
        </div>
        <ChipField
          act="hack.scale"
          label="The master shows"
          value={scale}
          choices={SCALES}
          onChange={(value) => texts.put('scale', value)}
          fault={
            scale === 'UTC'
              ? null
              : scale === 'GPS'
                ? 'Satellite time runs ahead of UTC by whole seconds. It is written as shown; Debrief has to take it out.'
                : 'Ask whoever keeps it: satellite time is not UTC.'
          }
        />
      </section>
      {stamp === null ? (
        <section aria-label="Clocks">
          <h2>Clocks</h2>
          <ClockTable state={state} sheet={sheet} />
        </section>
      ) : (
        <HackEntry
          journal={journal}
          clock={clock}
          sheet={sheet}
          hack={state.hacks.length + 1}
          touch={stamp}
          master={master?.id ?? 'master'}
          masterTime={masterTime}
          scale={scale}
          texts={texts}
          onDone={() => {
            texts.clear();
            setTouch(() => null);
          }}
        />
      )}
    </div>
  );
}
