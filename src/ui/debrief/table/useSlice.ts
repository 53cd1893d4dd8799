import { useEffect, useState, type RefObject } from 'react';

export interface Slice {
  readonly first: number;
  readonly count: number;
}

/** The rule under a row is no part of its target. */
const RULE_PX = 1;
const SPARE_ROWS = 6;
const BEFORE_MEASURED_ROWS = 60;

/** Which rows of a long list stand in the page: those in view, and a few on either side. */
export function useSlice(of: {
  readonly scroller: RefObject<HTMLElement | null>;
  readonly total: number;
}): Slice & { readonly rowPx: number; readonly reveal: (index: number) => void } {
  const { scroller, total } = of;
  const [rowPx, setRowPx] = useState(53);
  const [topPx, setTopPx] = useState(0);
  const [roomPx, setRoomPx] = useState(0);
  useEffect(() => {
    const element = scroller.current;
    if (element === null) {
      return;
    }
    const onScroll = (): void => setTopPx(element.scrollTop);
    const observer = new ResizeObserver(() => {
      setRoomPx(element.clientHeight);
      setRowPx(rowPxOf(element));
    });
    observer.observe(element);
    element.addEventListener('scroll', onScroll, { passive: true });
    return () => {
      observer.disconnect();
      element.removeEventListener('scroll', onScroll);
    };
  }, [scroller]);
  const inViewRows = roomPx === 0 ? BEFORE_MEASURED_ROWS : Math.ceil(roomPx / rowPx);
  const first = Math.max(0, Math.min(Math.floor(topPx / rowPx) - SPARE_ROWS, total - 1));
  return {
    rowPx,
    first: total === 0 ? 0 : first,
    count: Math.min(total - first, inViewRows + 2 * SPARE_ROWS),
    reveal: (index) => {
      const element = scroller.current;
      if (element === null) {
        return;
      }
      // The heads stick to the top and cover one row.
      const rowTop = index * rowPx;
      const room = element.clientHeight - rowPx;
      if (rowTop < element.scrollTop || rowTop + rowPx > element.scrollTop + room) {
        element.scrollTo({
          top: Math.max(0, rowPx * Math.round((rowTop - room / 2 + rowPx / 2) / rowPx)),
        });
      }
    },
  };
}

/** Height of a row: the least target of a ground screen, as the millimetre of this screen has it. */
function rowPxOf(element: Element): number {
  const mm = Number.parseFloat(getComputedStyle(element).getPropertyValue('--mm'));
  return Number.isFinite(mm) ? Math.max(44, Math.ceil(10 * mm)) + RULE_PX : 53;
}
