import { grouped } from '../file/grouped.ts';
import type { RecorderId } from '../record/brand.ts';
import type { EntryOf } from '../record/entry.ts';
import type { FlightView } from '../record/flight.ts';
import { iso, type Meaning } from '../file/tables.ts';

type Position = readonly [longitudeDeg: number, latitudeDeg: number, altitudeM?: number];
interface Placed {
  readonly time: string;
  readonly position: Position;
  readonly accuracyM: number;
  readonly id: string;
  readonly rec: RecorderId;
}

/**
 * Where each tablet's own receiver said it was, as RFC 7946: a track a recorder and a point a position, WGS 84, heights
 * above the ellipsoid. Null where nobody wrote a position.
 *
 * @see https://www.rfc-editor.org/rfc/rfc7946
 */
export function geoJsonOf(view: FlightView, { toBase }: Pick<Meaning, 'toBase'>): object | null {
  const placed = view.standing.flatMap(({ effective, standing, at, entry }): readonly Placed[] =>
    standing !== 'stands' || effective.kind !== 'positionRead'
      ? []
      : [
          {
            time: iso(toBase(at, entry.rec)),
            position: positionOf(effective),
            accuracyM: effective.body.accuracyM,
            id: entry.id,
            rec: entry.rec,
          },
        ],
  );
  if (placed.length === 0) return null;
  return {
    type: 'FeatureCollection',
    features: [
      ...[...grouped(placed, ({ rec }) => rec)].flatMap(([rec, own]) => trackOf(rec, own)),
      ...placed.map(({ time, position, accuracyM, id, rec }) => ({
        type: 'Feature',
        id,
        geometry: { type: 'Point', coordinates: position },
        properties: { time_utc: time, accuracy_m: accuracyM, recorder: rec },
      })),
    ],
  };
}

function positionOf({ body }: EntryOf<'positionRead'>): Position {
  const { longitudeDeg, latitudeDeg, altitudeM } = body;
  return altitudeM === undefined
    ? [longitudeDeg, latitudeDeg]
    : [longitudeDeg, latitudeDeg, altitudeM];
}

/** One position is no track. */
function trackOf(rec: RecorderId, own: readonly Placed[]): readonly object[] {
  if (own.length < 2) return [];
  const parts = cutAtAntimeridian(own.map(({ position }) => position));
  return [
    {
      type: 'Feature',
      geometry:
        parts.length === 1
          ? { type: 'LineString', coordinates: parts[0] }
          : { type: 'MultiLineString', coordinates: parts },
      properties: { recorder: rec, times_utc: own.map(({ time }) => time) },
    },
  ];
}

/** RFC 7946, 3.1.9: a line that crosses the antimeridian is cut there, so that no part crosses it. */
function cutAtAntimeridian(line: readonly Position[]): readonly (readonly Position[])[] {
  const parts: Position[][] = [];
  let part: Position[] = [];
  for (const [index, here] of line.entries()) {
    const before = line[index - 1];
    if (before !== undefined && Math.abs(here[0] - before[0]) > 180) {
      const side = before[0] > 0 ? 180 : -180;
      const unwrapped = here[0] + 2 * side;
      const share = (side - before[0]) / (unwrapped - before[0]);
      const latitudeDeg = before[1] + share * (here[1] - before[1]);
      parts.push([...part, [side, latitudeDeg]]);
      part = [[-side, latitudeDeg]];
    }
    part.push(here);
  }
  return [...parts, part];
}
