import type { Stamp } from '../../record/entry.ts';
import { hms } from './time.ts';

/** The pressed look is set on the element itself: it must be painted before anything is drawn anew. */
export function press(element: HTMLElement, stamp: Stamp): void {
  element.dataset['down'] = '';
  element.dataset['frozen'] = `${hms(stamp.wall)}\u00a0Z`;
}

export function release(element: HTMLElement): void {
  delete element.dataset['down'];
  delete element.dataset['frozen'];
  delete element.dataset['holding'];
}

export function capture(root: HTMLElement, pointerId: number): void {
  try {
    root.setPointerCapture(pointerId);
  } catch {
    // The pointer is already gone: its release or cancel is on the way all the same.
  }
}

export function closestTarget(node: EventTarget | null): HTMLElement | null {
  const found = node instanceof Element ? node.closest('[data-act]') : null;
  return found instanceof HTMLElement && !found.matches(':disabled') ? found : null;
}

export function isText(node: EventTarget | null): boolean {
  return node instanceof Element && node.closest('input, textarea') !== null;
}

export function actOf(element: HTMLElement): string {
  return element.dataset['act'] ?? '';
}
