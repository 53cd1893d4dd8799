import type { Wing } from './sheet.ts';

/**
 * What somebody on board does, as written into each of their entries. A role is free text; these are the ones that the
 * app knows by name, because tiles and the wing at hand follow from them.
 */
export const ROLES = ['scribe', 'wing engineer, left', 'wing engineer, right'] as const;

/** The wing that a role looks after; null for one that looks after the whole flight. */
export function wingOfRole(role: string): Wing | null {
  switch (role.trim().toLowerCase()) {
    case 'wing engineer, left':
      return 'L';
    case 'wing engineer, right':
      return 'R';
    default:
      return null;
  }
}
