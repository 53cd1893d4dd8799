/** What the page did for the touches so far. */
export interface Saves {
  /** Of each mark of one more saved entry: how many lines were durable by then, beyond those that the mark says. */
  readonly durableAhead: readonly number[];
  readonly notStrict: number;
  /** Contacts whose look was changed by the next frame, and all contacts. */
  readonly pressedInFrame: number;
  readonly contacts: number;
  readonly pulsesMs: readonly number[];
  readonly ticksMs: readonly number[];
  /** What the polite regions said, one after the other. */
  readonly said: readonly string[];
}

/** Runs in the page before the app, so it must stand on its own. */
export function watchSaves(): void {
  const seen = {
    durableAhead: [] as number[],
    notStrict: 0,
    pressedInFrame: 0,
    contacts: 0,
    pulsesMs: [] as number[],
    ticksMs: [] as number[],
    said: [] as string[],
  };
  let durable = 0;
  const linesOf = new Map<IDBTransaction, number>();
  const add: IDBObjectStore['add'] = Reflect.get(IDBObjectStore.prototype, 'add');
  const put: IDBObjectStore['put'] = Reflect.get(IDBObjectStore.prototype, 'put');
  const counted = ({ name, transaction }: IDBObjectStore): void => {
    if (name !== 'lines') return;
    if (transaction.durability !== 'strict') seen.notStrict += 1;
    linesOf.set(transaction, (linesOf.get(transaction) ?? 0) + 1);
  };
  const begin: IDBDatabase['transaction'] = Reflect.get(IDBDatabase.prototype, 'transaction');
  IDBDatabase.prototype.transaction = function (...given) {
    const begun = begin.apply(this, given);
    // From its beginning, so that nobody hears of the end before this does.
    begun.addEventListener('complete', () => {
      durable += linesOf.get(begun) ?? 0;
    });
    return begun;
  };
  IDBObjectStore.prototype.add = function (...given) {
    counted(this);
    return add.apply(this, given);
  };
  IDBObjectStore.prototype.put = function (...given) {
    counted(this);
    return put.apply(this, given);
  };
  let from: { readonly saved: number; readonly durable: number } | null = null;
  const spoken = (region: Element): string => {
    const copy = region.cloneNode(true);
    if (!(copy instanceof Element)) return '';
    for (const silent of copy.querySelectorAll('[aria-hidden="true"]')) silent.remove();
    return (copy.textContent ?? '').trim();
  };
  const last = new Map<Element, string>();
  new MutationObserver(() => {
    const mark = document.querySelector<HTMLElement>('[data-saved]');
    const saved = Number(mark?.dataset['saved'] ?? Number.NaN);
    if (from !== null && Number.isFinite(saved)) {
      const before = seen.durableAhead.length;
      if (saved - from.saved > before) {
        seen.durableAhead.push(durable - from.durable - (saved - from.saved));
      }
    }
    for (const region of document.querySelectorAll('[role="status"]')) {
      const words = spoken(region);
      if (last.get(region) !== words && words !== '') seen.said.push(words);
      last.set(region, words);
    }
  }).observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
  window.addEventListener(
    'pointerdown',
    ({ target }) => {
      const key = target instanceof Element ? target.closest<HTMLElement>('[data-act]') : null;
      seen.contacts += 1;
      // What was there before the first contact is counted by nobody.
      from ??= {
        saved: Number(document.querySelector<HTMLElement>('[data-saved]')?.dataset['saved']),
        durable,
      };
      requestAnimationFrame(() => {
        const { boxShadow } = key === null ? { boxShadow: 'none' } : getComputedStyle(key);
        if (key?.dataset['frozen'] !== undefined && boxShadow !== 'none') seen.pressedInFrame += 1;
      });
    },
    true,
  );
  Object.defineProperty(navigator, 'vibrate', { value: (ms: number) => seen.pulsesMs.push(ms) });
  const start: OscillatorNode['start'] = Reflect.get(OscillatorNode.prototype, 'start');
  const stop: OscillatorNode['stop'] = Reflect.get(OscillatorNode.prototype, 'stop');
  const began = new Map<unknown, number>();
  OscillatorNode.prototype.start = function (at = 0) {
    began.set(this, at);
    start.call(this, at);
  };
  OscillatorNode.prototype.stop = function (at = 0) {
    seen.ticksMs.push(Math.round(1000 * (at - (began.get(this) ?? 0))));
    stop.call(this, at);
  };
  Object.assign(globalThis, { savesSeen: seen });
}
