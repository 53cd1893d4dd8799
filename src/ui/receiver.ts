import type { Located } from './ports.ts';

const ANSWER_WITHIN_MS = 30_000;

/** Asks the tablet's own receiver once; the browser asks the crew for leave the first time. It never rejects. */
export function locateByBrowser(): Promise<Located> {
  const receiver: Geolocation | undefined = navigator.geolocation;
  if (receiver === undefined) {
    return Promise.resolve({ kind: 'none' });
  }
  return new Promise((resolve) => {
    receiver.getCurrentPosition(
      ({ coords }) =>
        resolve({
          kind: 'fix',
          latitudeDeg: coords.latitude,
          longitudeDeg: coords.longitude,
          altitudeM: coords.altitude,
          accuracyM: coords.accuracy,
        }),
      (error) => resolve({ kind: error.code === error.PERMISSION_DENIED ? 'refused' : 'noFix' }),
      { enableHighAccuracy: true, maximumAge: 0, timeout: ANSWER_WITHIN_MS },
    );
  });
}
