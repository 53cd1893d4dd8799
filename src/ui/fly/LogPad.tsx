import { hms } from '../kit/time.ts';
import { TouchKey } from '../kit/TouchSurface.tsx';
import { entryLabel, isShown } from './entryLabel.ts';
import type { StandingEntry } from '../../record/flightState.ts';
import { itemsBackwards } from '../../record/trail.ts';
import { useFly } from './flyContext.ts';
import styles from './LogPad.module.css';

/** The log so far, newest first, by pages; an entry that is chosen can be back-dated, amended or withdrawn. */
export function LogPad({ page }: { readonly page: number }) {
  const fly = useFly();
  const rows = Math.max(2, Math.floor((fly.layout.places.full.h + 4) / 19) - 1);
  const shown = [...itemsBackwards(fly.view.timeline)].filter(isShown);
  const pages = Math.max(1, Math.ceil(shown.length / rows));
  const at = Math.min(page, pages - 1);
  const turn = (to: number): void =>
    fly.move({ do: 'open', pad: { kind: 'log', page: Math.min(pages - 1, Math.max(0, to)) } });
  return (
    <div className={styles.log} style={{ gridTemplateRows: `repeat(${rows + 1}, minmax(0, 1fr))` }}>
      {Array.from({ length: rows }, (_, index) => {
        const each = shown[at * rows + index];
        return each === undefined ? (
          <span key={`empty-${index}`} className={styles.wide} />
        ) : (
          <LogRow key={each.entry.id} standing={each} place={index} />
        );
      })}
      <TouchKey
        act="log-newer"
        disabled={at === 0}
        className={styles.turn}
        onTouch={() => turn(at - 1)}
      >
        Newer
      </TouchKey>
      <TouchKey
        act="log-older"
        disabled={at === pages - 1}
        className={styles.turn}
        onTouch={() => turn(at + 1)}
      >
        Older {at + 1}/{pages}
      </TouchKey>
      <TouchKey
        act="pad-close"
        className={styles.turn}
        onTouch={() => {
          fly.move({ do: 'closePad' });
          fly.move({ do: 'choose', entry: null });
        }}
      >
        Close
      </TouchKey>
    </div>
  );
}

function LogRow({ standing, place }: { readonly standing: StandingEntry; readonly place: number }) {
  const fly = useFly();
  const { id } = standing.entry;
  const chosen = fly.ui.chosen === id;
  const struck = standing.standing === 'withdrawn' || standing.standing === 'dropped';
  return (
    <TouchKey
      act={`log-${place}`}
      className={`${styles.wide} ${styles.row} ${chosen ? styles.chosen : ''}`}
      pressed={chosen}
      onTouch={() => {
        fly.move({ do: 'choose', entry: id });
        fly.move({ do: 'panel', panel: { kind: 'chosen', target: id } });
        if (fly.layout.panelUnderPad) {
          fly.move({ do: 'closePad' });
        }
      }}
    >
      <time>{hms(standing.at)}</time>
      <b className={struck ? styles.struck : undefined}>{entryLabel(standing, fly.sheet)}</b>
      <span>{markWords(standing)}</span>
    </TouchKey>
  );
}

function markWords(standing: StandingEntry): string {
  const words = [
    standing.standing === 'unconfirmed'
      ? '?'
      : standing.standing === 'stands'
        ? ''
        : standing.standing,
    standing.late ? 'late' : '',
    standing.amendedBy.length > 0 && standing.standing !== 'withdrawn' ? 'amended' : '',
  ];
  return words.filter((each) => each !== '').join(', ');
}
