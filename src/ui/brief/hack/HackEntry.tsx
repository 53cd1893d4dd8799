import type { Clock, Journal } from '../../../journal/journal.ts';
import type { EpochMs } from '../../../record/brand.ts';
import type { Stamp } from '../../../record/entry.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { GroundButton, NumberField, TextField } from '../../kit/Ground.tsx';
import { formNumber, useWrite } from '../forms/forms.ts';
import { clockText, offsetWords, readClock } from './hackTime.ts';
import type { KeptTexts } from '../useKept.ts';
import styles from '../Brief.module.css';

/** Read aloud, all clocks at once: the usual doubt of a callout. Common practice, no source. */
const USUAL_DOUBT_S = 0.3;
const FAR_MS = 30_000;

const SCALE_WORDS = {
  UTC: 'master shows UTC',
  GPS: 'master shows satellite time',
  unknown: 'scale of the master not known',
} as const;

/** What every other clock showed at the callout; then the hack is written whole. */
export function HackEntry(props: {
  readonly journal: Journal;
  readonly clock: Clock;
  readonly sheet: FlightSheet;
  readonly hack: number;
  readonly touch: Stamp;
  readonly master: string;
  readonly masterTime: EpochMs | null;
  readonly scale: 'UTC' | 'GPS' | 'unknown';
  readonly texts: KeptTexts;
  readonly onDone: () => void;
}) {
  const { touch, masterTime, texts } = props;
  const { write, refused } = useWrite(props.journal);
  const others = props.sheet.clocks.filter(
    (clock) => clock.id !== 'tablet' && clock.id !== props.master,
  );
  const doubt = formNumber(texts, 'doubt', 'Doubt', USUAL_DOUBT_S);
  const method = texts.of('method', 'read aloud, all clocks at once');
  const read = others.map((clock) => {
    const text = texts.of(`shown-${clock.id}`);
    const shown = masterTime === null ? null : readClock(text, masterTime);
    return { clock, text, shown };
  });
  const faulty = read.some(({ text, shown }) => text.trim() !== '' && shown === null);
  const send = () => {
    if (masterTime !== null) {
      write({
        kind: 'timeHackTaken',
        stamp: touch,
        body: {
          hack: props.hack,
          masterClock: props.master,
          master: masterTime,
          shown: read.flatMap(({ clock, shown }) =>
            shown === null ? [] : [{ clock: clock.id, shown }],
          ),
          method: `${method}; ${SCALE_WORDS[props.scale]}`,
          ...(doubt.value !== null && { doubtS: doubt.value }),
        },
      });
      props.onDone();
    }
  };
  const own = masterTime === null ? null : touch.wall - masterTime;
  return (
    <section aria-label="What the clocks showed">
      <h2>
        Touched at {clockText(touch.wall)}Z <span className={styles.count}>not written yet</span>
      </h2>
      {own === null ? null : (
        <p>
          <b>{`This tablet: ${offsetWords(own, doubt.value ?? USUAL_DOUBT_S)}`}</b>
          {Math.abs(own) > FAR_MS ? '. That is far: check the minute that was called.' : null}
        </p>
      )}
      {read.map(({ clock, text, shown }) => (
        <TextField
          key={clock.id}
          act={`hack.shown=${clock.id}`}
          label={`${clock.owner || clock.id} showed, HH:MM:SS`}
          value={text}
          onChange={(typed) => texts.put(`shown-${clock.id}`, typed)}
          fault={text.trim() !== '' && shown === null ? 'HH:MM:SS or HH:MM:SS.s, please.' : null}
          {...(shown !== null &&
            masterTime !== null && {
              hint: offsetWords(
                shown - masterTime,
                Math.max(doubt.value ?? USUAL_DOUBT_S, clock.resolutionS),
              ),
            })}
        />
      ))}
      <div className={styles.fields}>
        <NumberField
          act="hack.doubt"
          label="Doubt of the callout, one sigma"
          unit="s"
          value={doubt.text}
          onChange={(text) => texts.put('doubt', text)}
          fault={doubt.fault}
        />
        <TextField
          act="hack.method"
          label="How"
          value={method}
          onChange={(text) => texts.put('method', text)}
        />
      </div>
      <div className={styles.keys}>
        <GroundButton act="hack.drop" onPress={props.onDone}>
          Drop this touch
        </GroundButton>
        <GroundButton
          act="hack.write"
          strong
          disabled={masterTime === null || faulty || doubt.fault !== null}
          onPress={send}
        >
          Write the hack
        </GroundButton>
      </div>
      {refused === null ? null : <b role="alert">{refused}</b>}
    </section>
  );
}
