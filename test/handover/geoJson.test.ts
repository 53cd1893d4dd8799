import { describe, expect, it } from 'vitest';
import { geoJsonOf } from '../../src/handover/geoJson.ts';
import { viewOf } from '../../src/record/flight.ts';
import { chainOf, OPENED } from '../file/smallFlight.ts';

const at = (longitudeDeg: number, latitudeDeg: number, altitudeM?: number) =>
  ({
    kind: 'positionRead',
    body: {
      longitudeDeg,
      latitudeDeg,
      accuracyM: 8,
      ...(altitudeM === undefined ? {} : { altitudeM }),
    },
  }) as const;

const trackOf = (positions: readonly ReturnType<typeof at>[]): unknown =>
  geoJsonOf(viewOf(chainOf([OPENED, ...positions])), { toBase: (time) => time });

describe('a track as GeoJSON', () => {
  it('is none where nobody wrote a position', () => {
    expect(trackOf([])).toBeNull();
  });

  it('has longitude before latitude, and the height where there is one', () => {
    // RFC 7946, 3.1.1: longitude, latitude, and optionally the height above the ellipsoid in metres.
    expect(trackOf([at(11.5, 47.25, 900)])).toMatchObject({
      type: 'FeatureCollection',
      features: [{ geometry: { type: 'Point', coordinates: [11.5, 47.25, 900] } }],
    });
  });

  it('joins the positions of a recorder in order of time, each with its time', () => {
    expect(trackOf([at(1, 2), at(3, 4)])).toMatchObject({
      features: [
        {
          geometry: {
            type: 'LineString',
            coordinates: [
              [1, 2],
              [3, 4],
            ],
          },
          properties: { times_utc: ['2031-05-06T12:00:01.000Z', '2031-05-06T12:00:02.000Z'] },
        },
        {},
        {},
      ],
    });
  });

  it('is cut where it crosses the antimeridian', () => {
    // The example of RFC 7946, 3.1.9: from 45 N 170 E to 45 N 170 W is two lines that meet at 180.
    expect(trackOf([at(170, 45), at(-170, 45)])).toMatchObject({
      features: [
        {
          geometry: {
            type: 'MultiLineString',
            coordinates: [
              [
                [170, 45],
                [180, 45],
              ],
              [
                [-180, 45],
                [-170, 45],
              ],
            ],
          },
        },
        {},
        {},
      ],
    });
  });
});
