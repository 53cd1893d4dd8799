import type { EntryId } from '../../record/brand.ts';
import type { Stamp } from '../../record/entry.ts';
import type { StandingEntry } from '../../record/flightState.ts';
import { hms } from '../kit/time.ts';
import { ChipPanel, type Chip } from './ChipPanel.tsx';
import { entryLabel } from './entryLabel.ts';
import { useFly, type Fly } from './flyContext.ts';

const CALLED: Readonly<Record<string, string>> = {
  briefContact: 'Very short touch',
  slippedOff: 'The finger slid off',
  cancelled: 'The touch was cut off',
  heldLong: 'Held very long',
  twoTiles: 'Two tiles at once',
};

/** An entry chosen in the log, or a touch that may not have been meant: what can be done with it. */
export function ChosenPanel({ target }: { readonly target: EntryId }) {
  const fly = useFly();
  const standing = fly.view.byId(target);
  if (standing === undefined) {
    return null;
  }
  return (
    <ChipPanel
      title={`${hms(standing.at)} ${entryLabel(standing, fly.sheet)}`}
      sub={subWords(standing)}
      chips={chipsFor(fly, standing)}
      fixed={[
        ...(fly.layout.panelUnderPad
          ? [
              {
                act: 'to-log',
                label: 'Log',
                onTouch: () => fly.move({ do: 'open', pad: { kind: 'log', page: 0 } }),
              },
            ]
          : []),
        {
          act: 'panel-done',
          label: 'Done',
          onTouch: () => {
            fly.move({ do: 'panel', panel: null });
            fly.move({ do: 'choose', entry: null });
          },
        },
      ]}
      page={0}
      onMore={() => undefined}
    />
  );
}

function subWords(standing: StandingEntry): string {
  const { effective } = standing;
  if (standing.standing === 'unconfirmed' && effective.kind !== 'unrecognised') {
    return `${CALLED[effective.body.unconfirmed ?? ''] ?? 'Not sure'}: keep it?`;
  }
  return standing.standing === 'stands'
    ? 'Back-date by the keys, or:'
    : `It is ${standing.standing}.`;
}

function chipsFor(fly: Fly, standing: StandingEntry): readonly Chip[] {
  const target = standing.entry.id;
  const detail = (id: EntryId): void =>
    fly.move({ do: 'panel', panel: { kind: 'detail', target: id, field: 0, page: 0 } });
  const settle = (kept: boolean, stamp: Stamp): void => {
    void fly
      .append({ kind: 'unconfirmedSettled', body: { target, kept }, stamp })
      .then(() => (kept ? detail(target) : fly.move({ do: 'panel', panel: null })));
  };
  switch (standing.standing) {
    case 'unconfirmed':
      return [
        { act: 'keep', label: 'Keep', onTouch: ({ stamp }) => settle(true, stamp) },
        { act: 'drop', label: 'Drop', onTouch: ({ stamp }) => settle(false, stamp) },
      ];
    case 'dropped':
      return [{ act: 'keep', label: 'Keep', onTouch: ({ stamp }) => settle(true, stamp) }];
    case 'withdrawn':
      return [
        { act: 'restore', label: 'Restore', onTouch: ({ stamp }) => restore(fly, standing, stamp) },
      ];
    case 'stands':
      return [
        { act: 'amend', label: 'Amend', onTouch: () => detail(target) },
        {
          act: 'withdraw',
          label: 'Withdraw',
          onTouch: ({ stamp }) => {
            void fly
              .append({ kind: 'entryWithdrawn', body: { target, reason: 'withdrawn' }, stamp })
              .then((entry) => entry !== null && detail(entry.id));
          },
        },
      ];
  }
}

/** Withdrawing a withdrawal: the entry stands again, and all three stay readable. */
function restore(fly: Fly, standing: StandingEntry, stamp: Stamp): void {
  if (standing.withdrawnBy !== null) {
    void fly.append({
      kind: 'entryWithdrawn',
      body: { target: standing.withdrawnBy, reason: 'restored' },
      stamp,
    });
  }
}
