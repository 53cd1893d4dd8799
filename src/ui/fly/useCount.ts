import type { Stamp, WingProbes } from '../../record/entry.ts';
import type { Wing } from '../../record/sheet.ts';
import { otherWing, probesOf } from './act.ts';
import { change } from './field.ts';
import type { Fly } from './flyContext.ts';
import type { Pad } from './flyState.ts';
import { wingsOf } from './probeDraft.ts';

type CountState = Extract<Pad, { kind: 'count' }>;

/**
 * Writes how many probes of the wing were laminar, when nobody said which: a reading at the time of the tile's touch,
 * or the count of the gain or loss that it belongs to. The scribe is asked for the other wing next; both stand in one
 * entry.
 */
export async function enterCount(
  fly: Fly,
  pad: CountState,
  laminarCount: number,
  stamp: Stamp,
): Promise<void> {
  const call: WingProbes = { of: probesOf(fly.sheet, pad.wing).length, laminarCount };
  const effective = pad.target === null ? undefined : fly.view.byId(pad.target)?.effective;
  const entry = effective === undefined || effective.kind === 'unrecognised' ? null : effective;
  const said = wingsOf(entry) ?? {};
  const goesOn = fly.wing === null && said[otherWing(pad.wing)] === undefined;
  fly.move({ do: 'closePad' });
  if (pad.target !== null) {
    const wings: Readonly<Partial<Record<Wing, WingProbes>>> = { ...said, [pad.wing]: call };
    await fly.amend(
      pad.target,
      [
        change(
          'wings',
          Object.fromEntries(Object.entries(wings).map(([w, each]) => [w, { ...each }])),
        ),
      ],
      stamp,
    );
    askOtherWing(fly, pad, goesOn);
    return;
  }
  const read = await fly.append({
    kind: 'probesRead',
    body: { wings: { [pad.wing]: call } },
    stamp: pad.stamp ?? stamp,
  });
  if (read !== null) {
    fly.move({ do: 'panel', panel: { kind: 'detail', target: read.id, field: 0, page: 0 } });
    askOtherWing(fly, { ...pad, target: read.id }, goesOn);
  }
}

function askOtherWing(fly: Fly, pad: CountState, goesOn: boolean): void {
  if (goesOn) {
    fly.move({ do: 'open', pad: { ...pad, wing: otherWing(pad.wing) } });
  }
}
