import { useCallback, type RefCallback } from 'react';

/** Gives the link its bytes for as long as it stands in the page, and takes them back after. */
export function useBytesOf(
  bytes: Uint8Array<ArrayBuffer> | null,
  type: string,
): RefCallback<HTMLAnchorElement> {
  return useCallback(
    (link) => {
      if (link === null || bytes === null) {
        return;
      }
      const url = URL.createObjectURL(new Blob([bytes], { type }));
      link.setAttribute('href', url);
      return () => URL.revokeObjectURL(url);
    },
    [bytes, type],
  );
}
