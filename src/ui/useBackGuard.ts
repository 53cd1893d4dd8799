import { useEffect } from 'react';

/** While `active`, a back gesture stays on this page instead of leaving the flight. */
export function useBackGuard(active: boolean): void {
  useEffect(() => {
    if (!active) {
      return undefined;
    }
    const guard = (): void => history.pushState({ guard: true }, '');
    guard();
    window.addEventListener('popstate', guard);
    return () => window.removeEventListener('popstate', guard);
  }, [active]);
}
