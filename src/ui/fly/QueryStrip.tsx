import { figure } from '../kit/number.ts';
import { useSecond } from '../kit/time.ts';
import { TouchKey } from '../kit/TouchSurface.tsx';
import { amendmentOf } from './amend.ts';
import { change } from './field.ts';
import { useFly, type Fly } from './flyContext.ts';
import type { Pad, Query } from './flyState.ts';
import { instrumentWords } from './instruments.ts';
import styles from './QueryStrip.module.css';

/** A query asks once and for so long; then the value stays marked, saved and out of the figure. */
const ASKED_FOR_MS = 20_000;

/** The query that stands now, if one does. */
export function useQuery(): Query | null {
  const { ui, clock } = useFly();
  const now = useSecond(clock);
  return ui.query !== null && now - ui.query.askedAt < ASKED_FOR_MS ? ui.query : null;
}

/** Whether a query stands beside the boxes that it is about; from any other place it is asked in the strip. */
export function isAskedAtPad(pad: Pad | null): boolean {
  switch (pad?.kind) {
    case 'readings':
    case 'reading':
    case 'number':
    case 'clock':
    case 'tubes':
      return true;
    case 'pressures':
      return pad.probe !== null;
    default:
      return false;
  }
}

export function QueryWords({ query }: { readonly query: Query }) {
  const { sheet } = useFly();
  const instrument = sheet?.instruments.find((each) => each.id === query.instrument);
  return (
    <p className={styles.words} role="status">
      <b>
        {instrument === undefined ? query.instrument : instrumentWords(instrument, sheet)}:{' '}
        {figure(query.value, instrument?.format.decimals ?? 0)}
      </b>{' '}
      <span>{query.words}</span>
    </p>
  );
}

/** One touch each; the next key of the pad works all the same. */
export function QueryKeys({ query }: { readonly query: Query }) {
  const fly = useFly();
  const instrument = fly.sheet?.instruments.find((each) => each.id === query.instrument);
  return (
    <div
      className={styles.keys}
      style={{ gridTemplateColumns: `repeat(${query.candidate === null ? 2 : 3}, minmax(0, 1fr))` }}
    >
      {query.candidate === null ? null : (
        <TouchKey
          act="query-candidate"
          onTouch={({ stamp }) => takeCandidate(fly, query, query.candidate ?? query.value, stamp)}
        >
          {figure(query.candidate, instrument?.format.decimals ?? 0)}
        </TouchKey>
      )}
      <TouchKey act="query-keep" onTouch={({ stamp }) => keep(fly, query, stamp)}>
        Keep
      </TouchKey>
      <TouchKey
        act="query-reread"
        onTouch={() => {
          fly.move({ do: 'query', query: null });
          if (instrument !== undefined) {
            const field = {
              form: 'reading',
              id: `reading-${instrument.id}`,
              label: instrumentWords(instrument, fly.sheet),
              instrument,
            } as const;
            fly.move({
              do: 'open',
              pad: { kind: 'reading', target: query.entry, field, back: fly.ui.pad },
            });
          }
        }}
      >
        Re-read
      </TouchKey>
    </div>
  );
}

function keep(fly: Fly, query: Query, stamp: Parameters<Fly['amend']>[2]): void {
  fly.move({ do: 'query', query: null });
  const draft = amendmentOf(
    fly.view,
    query.entry,
    [change(`readings.${query.instrument}.queried`, null)],
    { stamp, code: 'kept', reason: 'kept as read' },
  );
  if (draft !== null) {
    void fly.append(draft);
  }
}

function takeCandidate(
  fly: Fly,
  query: Query,
  value: number,
  stamp: Parameters<Fly['amend']>[2],
): void {
  fly.move({ do: 'query', query: null });
  const changes = [
    change(`readings.${query.instrument}.value`, value),
    change(`readings.${query.instrument}.queried`, null),
  ];
  const draft = amendmentOf(fly.view, query.entry, changes, {
    stamp,
    code: 'misKeyed',
    reason: 'mis-keyed digit',
  });
  if (draft !== null) {
    void fly.append(draft);
  }
}
