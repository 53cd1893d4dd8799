import { epochMs, type EntryId } from '../../record/brand.ts';
import type { Stamp } from '../../record/entry.ts';
import { latestAtDigits } from '../kit/time.ts';
import { change, type Change } from './field.ts';
import type { Fly } from './flyContext.ts';
import type { Pad } from './flyState.ts';
import { pressureUnit } from './numberJob.ts';

const HALF_DAY_MS = 43_200_000;

/** A time keyed as six digits is the last such time; a clock's reading is the one nearest to the hack. */
export function clockChanges(
  fly: Fly,
  pad: Extract<Pad, { kind: 'clock' }>,
  digits: string,
  stamp: Stamp,
): readonly Change[] {
  const standing = fly.view.byId(pad.target);
  if (standing === undefined) {
    return [];
  }
  if (pad.field.form === 'time') {
    const at = latestAtDigits(digits, stamp.wall);
    return at === null ? [] : [change('at', at)];
  }
  const shown = latestAtDigits(digits, epochMs(standing.at + HALF_DAY_MS));
  if (shown === null) {
    return [];
  }
  const { clock } = pad.field;
  const entry = standing.effective;
  if (clock === null || entry.kind !== 'timeHackTaken') {
    return [change('master', shown)];
  }
  const others = entry.body.shown
    .filter((each) => each.clock !== clock)
    .map((each) => ({ clock: each.clock, shown: each.shown }));
  return [change('shown', [...others, { clock, shown }])];
}

export function tubeChanges(fly: Fly, target: EntryId, value: number): readonly Change[] {
  const entry = fly.view.byId(target)?.effective;
  const read = entry?.kind === 'rakeRead' ? (entry.body.tubes ?? []) : [];
  return [change('tubes', [...read, value]), change('tubeUnit', pressureUnit(fly))];
}

/** A probe's pressure is a reading of its instrument; a sheet that names none for it lends the probe's own id. */
export function pressureChange(fly: Fly, probe: string, value: number): Change {
  const instrument = fly.sheet?.instruments.find(
    (each) => each.quantity === 'probeDeficit' && each.probe === probe,
  );
  const id = instrument?.id ?? probe;
  return change(`readings.${id}`, {
    instrument: id,
    value,
    unit: instrument?.unit ?? pressureUnit(fly),
  });
}
