import { useEffect } from 'react';
import type { Fly } from './flyContext.ts';

/** A back gesture is answered in words: the guard keeps Fly, and the scribe reads why nothing else happened. */
export function useBackNotice({ clock, move }: Fly): void {
  useEffect(() => {
    const onBack = (): void => move({ do: 'notice', words: 'Still in Fly', at: clock.now() });
    window.addEventListener('popstate', onBack);
    return () => window.removeEventListener('popstate', onBack);
  }, [clock, move]);
}
