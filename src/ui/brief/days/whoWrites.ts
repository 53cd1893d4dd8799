import { ROLES } from '../../../record/roles.ts';
import type { FlightSheet } from '../../../record/sheet.ts';

/** The people of a flight sheet as chips. */
export function personChoices(
  people: FlightSheet['people'],
): readonly { readonly value: string; readonly label: string }[] {
  return people.map((one) => ({ value: one.id, label: `${one.id}, ${one.role}` }));
}

/** The roles that Fly has tiles for, and the one that stands. */
export function roleChoices(
  stands: string,
): readonly { readonly value: string; readonly label: string }[] {
  const own = stands.trim() === '' || ROLES.some((role) => role === stands) ? [] : [stands];
  return [...ROLES, ...own].map((value) => ({ value, label: value }));
}
