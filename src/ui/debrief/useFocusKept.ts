import { useEffect } from 'react';

const PLACES = 'li, section, article, main';
const TITLES = 'h2[tabindex="-1"], h3[tabindex="-1"]';

/**
 * The keyboard stays where the work was: a key that goes away with its form, or waits while an entry is saved, would
 * leave the focus nowhere. It comes back to the key once that may be pressed again, else to the title of the nearest
 * part that still stands. A focus that a person takes away stays away.
 */
export function useFocusKept(): void {
  useEffect(() => {
    let last: HTMLElement | null = null;
    let around: readonly HTMLElement[] = [];
    const onFocusIn = ({ target }: FocusEvent): void => {
      if (!(target instanceof HTMLElement)) return;
      last = target;
      around = placesAround(target);
    };
    const onFocusOut = ({ target }: FocusEvent): void => {
      // Only after the removal that it may be part of: then it tells a person's leave from a key that went away.
      queueMicrotask(() => {
        if (target === last && isNowhere() && last !== null && mayTake(last)) last = null;
      });
    };
    const restore = (): void => {
      if (last === null || !isNowhere()) return;
      if (last.isConnected) {
        if (mayTake(last)) last.focus({ preventScroll: true });
        return;
      }
      const place = around.find(({ isConnected }) => isConnected) ?? document.querySelector('main');
      const title = place?.querySelector<HTMLElement>(TITLES) ?? place;
      if (title instanceof HTMLElement) {
        if (!title.hasAttribute('tabindex')) title.tabIndex = -1;
        title.focus({ preventScroll: true });
      }
    };

    const observer = new MutationObserver(restore);
    observer.observe(document.body, {
      childList: true,
      subtree: true,
      attributes: true,
      attributeFilter: ['disabled'],
    });
    document.addEventListener('focusin', onFocusIn);
    document.addEventListener('focusout', onFocusOut);
    // Debrief takes the place of the page on which it was chosen.
    if (isNowhere()) {
      document.querySelector<HTMLElement>('[role="tab"][tabindex="0"]')?.focus();
    }
    return () => {
      observer.disconnect();
      document.removeEventListener('focusin', onFocusIn);
      document.removeEventListener('focusout', onFocusOut);
    };
  }, []);
}

function placesAround(element: HTMLElement): readonly HTMLElement[] {
  const found: HTMLElement[] = [];
  for (let at = element.parentElement; at !== null; at = at.parentElement) {
    if (at.matches(PLACES)) found.push(at);
  }
  return found;
}

function isNowhere(): boolean {
  return document.activeElement === null || document.activeElement === document.body;
}

function mayTake(element: HTMLElement): boolean {
  return element.isConnected && !element.matches(':disabled');
}
