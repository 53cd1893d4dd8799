import { TouchKey } from '../kit/TouchSurface.tsx';
import { EMPTY_BOXES, erased } from './boxes.ts';
import { useFly } from './flyContext.ts';
import type { Pad } from './flyState.ts';
import styles from './KeyPad.module.css';

/** A touch this long takes all digits away, a shorter one the last. */
const CLEARS_MS = 600;

/** Takes back a digit; on empty boxes it closes the pad. */
export function EraseKey({ pad }: { readonly pad: Pad }) {
  const fly = useFly();
  const { boxes } = fly.ui;
  return (
    <TouchKey
      act="key-erase"
      form="digit"
      className={styles.word}
      onTouch={({ stamp, lastedMs }) => {
        if (boxes.digits === '') {
          fly.move(
            'back' in pad && pad.back !== null ? { do: 'next', pad: pad.back } : { do: 'closePad' },
          );
        } else {
          fly.move({
            do: 'boxes',
            boxes: lastedMs >= CLEARS_MS ? EMPTY_BOXES : erased(boxes),
            stamp,
          });
        }
      }}
    >
      {boxes.digits === '' ? 'Close' : 'Erase'}
    </TouchKey>
  );
}
