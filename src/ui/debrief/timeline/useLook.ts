import { useEffect, useState, useSyncExternalStore, type RefObject } from 'react';

/** Changes whenever the theme, the text size or the millimetre does: what a canvas drew is stale then. */
export function useLook(): string {
  return useSyncExternalStore(watchLook, lookNow);
}

function lookNow(): string {
  const { documentElement } = document;
  return `${documentElement.dataset['theme'] ?? ''} ${documentElement.getAttribute('style') ?? ''} ${document.fonts?.status ?? ''}`;
}

function watchLook(listener: () => void): () => void {
  const observer = new MutationObserver(listener);
  observer.observe(document.documentElement, { attributeFilter: ['data-theme', 'style'] });
  document.fonts?.addEventListener?.('loadingdone', listener);
  return () => {
    observer.disconnect();
    document.fonts?.removeEventListener?.('loadingdone', listener);
  };
}

/** The size of an element's box in whole CSS px; zero until it stands. */
export function useBoxSize(target: RefObject<HTMLElement | null>): {
  readonly widthPx: number;
  readonly heightPx: number;
} {
  const [size, setSize] = useState({ widthPx: 0, heightPx: 0 });
  useEffect(() => {
    const element = target.current;
    if (element === null) {
      return;
    }
    const observer = new ResizeObserver(() => {
      setSize({ widthPx: element.clientWidth, heightPx: element.clientHeight });
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [target]);
  return size;
}
