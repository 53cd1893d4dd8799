import { useEffect, useId, useRef, useState } from 'react';
import { TouchKey } from '../kit/TouchSurface.tsx';
import { valueAt } from './amend.ts';
import { change } from './field.ts';
import { useFly } from './flyContext.ts';
import type { Pad } from './flyState.ts';
import styles from './TextPad.module.css';

/** Of a note: longer is for Debrief, nobody types more in the air. Of what somebody else said: as it was said. */
const MOST_LETTERS_OF_NOTE = 60;
const MOST_LETTERS = 120;

/** Free text by the system keyboard, at the top of the pad where that keyboard does not reach. */
export function TextPad({ pad }: { readonly pad: Extract<Pad, { kind: 'text' }> }) {
  const fly = useFly();
  const id = useId();
  const field = useRef<HTMLTextAreaElement>(null);
  // Opened to be written in: the system keyboard must come up without a second touch.
  useEffect(() => field.current?.focus(), []);
  const textKey = `${pad.target}-${pad.path}`;
  const standing = fly.view.byId(pad.target);
  const said = standing === undefined ? '' : valueAt(standing, pad.path);
  const isNote = ['note', 'caption'].includes(pad.path) || standing?.entry.kind === 'noted';
  const [text, setText] = useState(
    fly.ui.texts.get(textKey) ?? (typeof said === 'string' ? said : ''),
  );
  return (
    <div className={styles.text}>
      <label htmlFor={id}>{pad.label}</label>
      <textarea
        id={id}
        data-act="text"
        maxLength={isNote ? MOST_LETTERS_OF_NOTE : MOST_LETTERS}
        value={text}
        ref={field}
        autoComplete="off"
        onChange={(event) => {
          setText(event.target.value);
          fly.move({ do: 'keepText', key: textKey, text: event.target.value });
        }}
      />
      <div className={styles.keys}>
        <TouchKey act="pad-close" onTouch={() => fly.move({ do: 'closePad' })}>
          Close
        </TouchKey>
        <TouchKey
          act="text-enter"
          className={styles.enter}
          disabled={text.trim() === ''}
          onTouch={({ stamp }) => {
            fly.move({ do: 'keepText', key: textKey, text: '' });
            fly.move({ do: 'closePad' });
            void fly.amend(pad.target, [change(pad.path, text.trim())], stamp);
          }}
        >
          Enter
        </TouchKey>
      </div>
    </div>
  );
}
