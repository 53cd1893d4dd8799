import { TouchKey } from '../kit/TouchSurface.tsx';
import { undoLines } from './entryLabel.ts';
import { backDated } from './amend.ts';
import { useFly } from './flyContext.ts';
import { newestEvent, undoTarget } from './undo.ts';
import styles from './Undo.module.css';

/** Width of a letter at text size 1, drawn a little closer together; and of the two frames round the words. */
const LETTER_MM = 2.5;
const FRAMES_MM = 2.2;

/** One touch takes back the newest entry that stands; it is struck out, never erased. */
export function UndoKey() {
  const fly = useFly();
  const letters = Math.floor(
    (fly.layout.places.undo.w - FRAMES_MM) / (LETTER_MM * fly.layout.textSize),
  );
  const target = undoTarget(fly.journal.entries(), fly.view, fly.journal.recorder());
  return (
    <TouchKey
      act="undo"
      form="key"
      className={styles.undo}
      disabled={target === null}
      onTouch={({ stamp }) => {
        if (target === null) {
          return;
        }
        void fly
          .append({
            kind: 'entryWithdrawn',
            body: { target: target.entry.id, reason: 'undone' },
            stamp,
          })
          .then((entry) => {
            fly.move({ do: 'closePad' });
            fly.move({
              do: 'panel',
              panel:
                entry === null ? null : { kind: 'detail', target: entry.id, field: 0, page: 0 },
            });
          });
      }}
    >
      <b>Undo</b>
      {(target === null ? ['nothing'] : undoLines(target, fly.sheet, letters)).map((line) => (
        <span key={line} className={styles.target}>
          {line}
        </span>
      ))}
    </TouchKey>
  );
}

const STEPS = [
  { act: 'back-10', backS: 10, words: ['\u221210', 's'] },
  { act: 'back-30', backS: 30, words: ['\u221230', 's'] },
  { act: 'back-60', backS: 60, words: ['\u22121', 'min'] },
  { act: 'back-300', backS: 300, words: ['\u22125', 'min'] },
] as const;

/** Moves the chosen entry, or the newest one, back in time; the keys add up and the touch time stays in the record. */
export function BackKeys() {
  const fly = useFly();
  const { chosen } = fly.ui;
  const newest =
    chosen === null
      ? (newestEvent(fly.journal.entries(), fly.view, fly.journal.recorder())?.entry.id ?? null)
      : chosen;
  const steps = STEPS.filter((step) => fly.layout.backKeys === 4 || step.backS !== 30);
  return (
    <div
      className={styles.back}
      style={{ gridTemplateColumns: `repeat(${steps.length}, minmax(0, 1fr))` }}
    >
      {steps.map((step) => (
        <TouchKey
          key={step.act}
          act={step.act}
          label={`Back-date ${step.backS} seconds`}
          disabled={newest === null}
          onTouch={({ stamp }) => {
            const draft = newest === null ? null : backDated(fly.view, newest, step.backS, stamp);
            if (draft !== null) {
              void fly.append(draft);
            }
          }}
        >
          <b>{step.words[0]}</b>
          <span>{step.words[1]}</span>
        </TouchKey>
      ))}
    </div>
  );
}
