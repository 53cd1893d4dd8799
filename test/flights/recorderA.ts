import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import {
  evenTrace,
  type EvenTrace,
  type RecorderChannel,
} from '../../src/analysis/recorder/trace.ts';
import { recorderHead, type RecorderHead } from '../../src/file/recorder/recorderHead.ts';
import { recorderReader } from '../../src/file/recorder/recorderReader.ts';

/** The flight recorder's trace of flight A, once a second, as it came off the aircraft. */
const RECORDER_A_GZ = join(import.meta.dirname, 'scripts/flight-a-recorder.csv.gz');

const KG_PER_S_OF_LB_PER_H = 0.45359237 / 3600;
const COLUMNS: readonly (Pick<RecorderChannel, 'use' | 'engine'> & {
  readonly column: number;
  readonly factor: number;
  readonly zero: number;
})[] = [
  { column: 1, use: 'mach', engine: null, factor: 1, zero: 0 },
  { column: 2, use: 'pressureAltitude', engine: null, factor: 0.3048, zero: 0 },
  { column: 3, use: 'staticAirTemp', engine: null, factor: 1, zero: 273.15 },
  { column: 4, use: 'fuelFlow', engine: 1, factor: KG_PER_S_OF_LB_PER_H, zero: 0 },
  { column: 5, use: 'fuelFlow', engine: 2, factor: KG_PER_S_OF_LB_PER_H, zero: 0 },
  { column: 6, use: 'suctionFuelFlow', engine: null, factor: KG_PER_S_OF_LB_PER_H, zero: 0 },
];

function recorderABytes(): Uint8Array {
  return new Uint8Array(gunzipSync(readFileSync(RECORDER_A_GZ)));
}

/** @throws RangeError when the file does not begin with a table */
function headOf(bytes: Uint8Array): RecorderHead {
  const head = recorderHead(new TextDecoder().decode(bytes.subarray(0, 65_536)));
  if (typeof head === 'string') throw new RangeError(`a table must be found, got ${head}`);
  return head;
}

/** @param lateMs what the recorder's clock is set ahead of the aircraft's */
export function recorderA(lateMs = 0): EvenTrace {
  const bytes = recorderABytes();
  const head = headOf(bytes);
  const reader = recorderReader(head, {
    time: { column: 0, form: 'iso', startMs: 0 },
    columns: COLUMNS,
  });
  reader.push(bytes);
  const { timesMs, columns } = reader.end();
  const even = evenTrace({
    timesMs: timesMs.map((ms) => ms + lateMs),
    channels: COLUMNS.map(({ use, engine }, index) => ({
      name: use,
      use,
      engine,
      values: columns[index] ?? new Float32Array(0),
    })),
  });
  if (even === null) throw new RangeError('the trace must have rows');
  return even;
}
