/** Runs in the page: what can be touched there now, by name, with its smaller side in px of the window. */
export function targetsInPage(): readonly { readonly act: string; readonly side: number }[] {
  // A list for keyboard and reader stands beside the chart and takes no touch of its own.
  const touched = (each: HTMLElement): boolean =>
    each.getClientRects().length > 0 &&
    each.tabIndex >= 0 &&
    !each.matches(':disabled') &&
    each.closest('[role="listbox"]') === null;
  return [...document.querySelectorAll<HTMLElement>('[data-act]')].filter(touched).map((each) => {
    // A tick is touched by its words too.
    const label = each.closest('label') ?? each;
    const { width, height } = label.getBoundingClientRect();
    return { act: each.dataset['act'] ?? '', side: Math.min(width, height) };
  });
}

/** Runs in the page: what has the focus, and the ring round it. Must stand on its own. */
export function focusInPage(): {
  readonly act: string;
  readonly px: number;
  readonly ink: readonly [number, number, number];
  readonly ground: readonly [number, number, number];
} | null {
  const at = document.activeElement;
  const act = at?.getAttribute('data-act') ?? null;
  if (at === null || act === null) return null;
  const rgb = (css: string): readonly [number, number, number] => {
    const [red = 0, green = 0, blue = 0] = (css.match(/[\d.]+/g) ?? []).map(Number);
    return [red, green, blue];
  };
  let ground = getComputedStyle(document.documentElement).backgroundColor;
  for (let each = at.parentElement; each !== null; each = each.parentElement) {
    const own = getComputedStyle(each).backgroundColor;
    if (!own.endsWith(', 0)')) {
      ground = own;
      break;
    }
  }
  const { outlineWidth, outlineStyle, outlineColor } = getComputedStyle(at);
  const px = outlineStyle === 'none' ? 0 : Number.parseFloat(outlineWidth);
  return { act, px, ink: rgb(outlineColor), ground: rgb(ground) };
}
