import type { TimelineHeader } from './timelineFile.ts';

/**
 * Name of a flight's timeline file. A practice or demo flight says so first, so that it can never pass as a real one.
 *
 * @returns e.g. `2032-06-02-suction-effectiveness-1f0c9a3e.jsonl`
 */
export function timelineFileName(header: TimelineHeader): string {
  const title = header.title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40);
  const nature = header.nature === 'flight' ? '' : `${header.nature}-`;
  return `${nature}${header.date || 'undated'}-${title || 'flight'}-${header.flight.slice(0, 8)}.jsonl`;
}
