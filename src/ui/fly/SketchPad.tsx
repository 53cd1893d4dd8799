import { counted } from '../../record/entryPhrases.ts';
import { numbersIn, SKETCH_STROKES_MAX } from '../../record/sketch.ts';
import type { Stamp } from '../../record/entry.ts';
import { Ink } from '../kit/Ink.tsx';
import { actOf } from './acts.ts';
import { ControlGrid } from './ControlGrid.tsx';
import { useFly } from './flyContext.ts';
import type { Pad } from './flyState.ts';
import { Place } from './Place.tsx';
import styles from './SketchPad.module.css';
import { writeAct } from './touchTile.ts';
import { useInkCard } from './useInkCard.ts';

type SketchState = Extract<Pad, { kind: 'sketch' }>;

/** A blank card for what no word says: drawn by finger, saved by its key, kept half-drawn until then. */
export function SketchPad({ pad }: { readonly pad: SketchState }) {
  const fly = useFly();
  const { places } = fly.layout;
  const key = pad.target ?? 'now';
  const ink = fly.ui.inks.get(key);
  const strokes = ink?.strokes ?? [];
  const keep = (kept: typeof strokes, first: Stamp): void =>
    fly.move({ do: 'ink', key, ink: kept.length === 0 ? null : { strokes: kept, first } });
  const card = useInkCard({
    fly,
    drawn: numbersIn(strokes),
    onStroke: (stroke, first) => {
      if (strokes.length < SKETCH_STROKES_MAX) keep([...strokes, stroke], ink?.first ?? first);
    },
  });
  const shown = card.stroke === null ? strokes : [...strokes, card.stroke];
  const save = async (): Promise<void> => {
    if (ink === undefined) {
      return;
    }
    fly.move({ do: 'ink', key, ink: null });
    fly.move({ do: 'closePad' });
    const target = pad.target === null ? {} : { target: pad.target };
    const saved = await fly.append({
      kind: 'sketchDrawn',
      body: { strokes: ink.strokes, ...target },
      stamp: ink.first,
    });
    if (saved === null) {
      fly.move({ do: 'ink', key, ink });
      return;
    }
    fly.move({ do: 'panel', panel: { kind: 'detail', target: saved.id, field: 0, page: 0 } });
  };
  return (
    <>
      <Place at={places.cells} label="Card to draw on">
        <div className={styles.room}>
          <div className={styles.card} data-ink="" {...card.handlers}>
            <Ink strokes={shown} label={`Card with ${counted(strokes.length, 'stroke')}`} />
          </div>
        </div>
      </Place>
      <Place at={places.controls} label="Sketch, choices">
        <ControlGrid
          title="Sketch"
          sub={strokes.length === 0 ? 'draw on the card' : counted(strokes.length, 'stroke')}
          keys={[
            {
              act: 'ink-back',
              label: 'Stroke off',
              disabled: ink === undefined,
              onTouch: () => {
                if (ink !== undefined) keep(strokes.slice(0, -1), ink.first);
              },
            },
            {
              act: 'ink-words',
              label: 'Words',
              onTouch: (touch) => {
                const note = actOf('note');
                fly.move({ do: 'closePad' });
                if (note !== null) void writeAct(fly, note, touch);
              },
            },
            { act: 'pad-close', label: 'Close', onTouch: () => fly.move({ do: 'closePad' }) },
            {
              act: 'ink-save',
              label: 'Save',
              strong: true,
              disabled: ink === undefined,
              onTouch: () => void save(),
            },
          ]}
        />
      </Place>
    </>
  );
}
