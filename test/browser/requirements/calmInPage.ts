/** What was found on one screen of Fly, each by a name that tells where. */
export interface Calm {
  readonly dialogs: readonly string[];
  readonly endless: readonly string[];
  /** Targets with a handler for more than a touch. */
  readonly gestures: readonly string[];
  readonly nameless: readonly string[];
  readonly assertive: readonly string[];
  /** Texts with a capital O next to a figure: the fonts have no slashed zero. */
  readonly ohs: readonly string[];
  readonly modals: number;
  /** What changed its place with no touch just before that explains it, as the browser's layout shifts tell. */
  readonly movers: readonly string[];
  /** Where each target of the screen behind pads and panels stands. */
  readonly standing: readonly { readonly name: string; readonly box: string }[];
}

/** Runs in the page, so it must stand on its own. */
export function calmInPage(): Calm {
  const root = document.querySelector('#root');
  const all = [...(root?.querySelectorAll<HTMLElement>('*') ?? [])];
  const nameOf = (each: Element): string =>
    each.getAttribute('data-act') ?? each.getAttribute('aria-label') ?? each.tagName.toLowerCase();
  const GESTURES = /^on(PointerMove|TouchMove|MouseMove|Drag\w*|Drop|DoubleClick|Wheel|Scroll)$/;
  const handlersOf = (each: Element): readonly string[] => {
    const key = Object.keys(each).find((name) => name.startsWith('__reactProps$'));
    const given: unknown = key === undefined ? null : Reflect.get(each, key);
    return typeof given === 'object' && given !== null ? Object.keys(given) : [];
  };
  const drawn = (each: Element): boolean => each.getClientRects().length > 0;
  const named = (each: HTMLElement): boolean =>
    each.innerText.trim() !== '' ||
    (each.getAttribute('aria-label') ?? '') !== '' ||
    (each instanceof HTMLTextAreaElement && each.labels.length > 0) ||
    (each instanceof HTMLInputElement && (each.labels?.length ?? 0) > 0);
  const texts = all.filter((each) => each.children.length === 0 && drawn(each));
  const { modals, movers } = Reflect.get(globalThis, 'calmSeen')();
  return {
    dialogs: all
      .filter((each) =>
        each.matches('dialog, [role="dialog"], [role="alertdialog"], [aria-modal="true"]'),
      )
      .map(nameOf),
    endless: document
      .getAnimations()
      .filter(({ effect }) => effect?.getComputedTiming().iterations === Infinity)
      .map(({ id }) => id),
    gestures: all
      .filter((each) => handlersOf(each).some((name) => GESTURES.test(name)))
      .map(nameOf),
    nameless: all
      .filter((each) => each.matches('button, input, textarea, select') && drawn(each))
      .filter((each) => !named(each))
      .map(nameOf),
    assertive: all
      .filter((each) => each.matches('[aria-live="assertive"], [role="alert"]'))
      .map(nameOf),
    ohs: texts.map((each) => each.innerText ?? '').filter((said) => /\dO|O\d/.test(said)),
    modals,
    movers,
    standing: all
      .filter((each) => each.matches('[data-act]') && drawn(each))
      .flatMap((each) => {
        const part = each.closest('section')?.getAttribute('aria-label') ?? '';
        const { left, top, width, height } = each.getBoundingClientRect();
        const fixed = /^(Events, |Phase|Theme|Undo|Back-date)/.test(part);
        const box = [left, top, width, height].map(Math.round).join(' ');
        return fixed ? [{ name: `${part}: ${nameOf(each)}`, box }] : [];
      }),
  };
}
