import { EraseKey } from './EraseKey.tsx';
import { TouchKey } from '../kit/TouchSurface.tsx';
import { change } from '../kit/number.ts';
import { EMPTY_BOXES, isFull, signTurned, stepped, typed } from './boxes.ts';
import { enterNumber } from './enterNumber.ts';
import { useFly } from './flyContext.ts';
import type { Pad } from './flyState.ts';
import type { NumberJob } from './numberJob.ts';
import styles from './KeyPad.module.css';

/** 1-2-3 on top, 0 at the bottom centre, step keys in a fourth column. No decimal key: the point is printed. */
export function KeyPad({ pad, job }: { readonly pad: Pad; readonly job: NumberJob }) {
  const fly = useFly();
  const { boxes } = fly.ui;
  const { format, step, last } = job.spec;
  const digitKey = (digit: string) => (
    <TouchKey
      key={digit}
      act={`key-${digit}`}
      form="digit"
      className={styles.digit}
      onTouch={({ stamp }) => fly.move({ do: 'boxes', boxes: typed(boxes, format, digit), stamp })}
    >
      {digit}
    </TouchKey>
  );
  const stepKey = (act: string, steps: number) => (
    <TouchKey
      act={act}
      form="digit"
      className={styles.step}
      onTouch={({ stamp }) =>
        fly.move({ do: 'boxes', boxes: stepped(boxes, format, steps * step, last), stamp })
      }
    >
      {change(steps * step, format.decimals)}
    </TouchKey>
  );
  const armed = isFull(boxes, format) || (!format.exact && boxes.digits !== '');
  return (
    <div className={styles.pad}>
      {['1', '2', '3'].map(digitKey)}
      {format.signed ? (
        <TouchKey
          act="key-sign"
          form="digit"
          className={styles.step}
          onTouch={({ stamp }) =>
            fly.move({
              do: 'boxes',
              boxes: signTurned(boxes.digits === '' ? EMPTY_BOXES : boxes),
              stamp,
            })
          }
        >
          +/{'\u2212'}
        </TouchKey>
      ) : (
        stepKey('step-down-10', -10)
      )}
      {['4', '5', '6'].map(digitKey)}
      {stepKey('step-down-1', -1)}
      {['7', '8', '9'].map(digitKey)}
      {stepKey('step-up-1', 1)}
      <EraseKey pad={pad} />
      {digitKey('0')}
      <TouchKey
        act="key-enter"
        form="digit"
        className={armed ? `${styles.word} ${styles.armed}` : styles.word}
        onTouch={({ stamp }) => void enterNumber(fly, pad, job, stamp)}
      >
        {boxes.digits === '' ? 'Skip' : armed ? 'Enter' : 'Short'}
      </TouchKey>
      {stepKey('step-up-10', 10)}
    </div>
  );
}
