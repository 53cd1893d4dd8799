import type { Scribe } from '../scribe.ts';

/**
 * What a hand and an eye need, in milliseconds, for no machine has either. Think, point, press and the eye's way are
 * the keystroke-level model and the model human processor of Card, Moran and Newell, The Psychology of Human-Computer
 * Interaction, 1983 (from memory, unverified): M 1.35 s, P 1.1 s, B 0.1 s down and 0.1 s up, an eye movement 0.23 s, a
 * simple reaction 0.1 + 0.07 + 0.07 s. Digits and names that stand on a card are looked at, not thought of (their rule 0).
 */
const THINK_MS = 1_350;
const POINT_MS = 1_100;
const PRESS_MS = 100;
const EYE_MS = 230;
const REACT_MS = 240;
/**
 * From key to key: Fitts' law in Shannon's form with the smaller side as the width, at the throughput of an avionic
 * touch screen that was shaken (Int. J. Hum.-Comput. Interact. 2023, 10.1080/10447318.2023.2212225, abstract).
 */
const THROUGHPUT_BIT_PER_MS = 5.7 / 1000;

/** One hand at one task: touches are counted, and each comes when a hand could have made it. */
export class Hand {
  readonly #scribe: Scribe;
  readonly #fromMs: number;
  #spentMs = 0;
  #touches = 0;
  #at: { readonly x: number; readonly y: number } | null = null;

  /** Begins now, at rest, by the page's clocks. */
  constructor(scribe: Scribe) {
    this.#scribe = scribe;
    this.#fromMs = scribe.nowMs + 1_000;
  }

  get touches(): number {
    return this.#touches;
  }

  get seconds(): number {
    return this.#spentMs / 1000;
  }

  /** Makes up its mind. */
  think(): void {
    this.#spentMs += THINK_MS;
  }

  /** Was waiting for just this cue. */
  react(): void {
    this.#spentMs += REACT_MS;
  }

  /** Looks at a card or a gauge, and back. */
  look(): void {
    this.#spentMs += 2 * EYE_MS;
  }

  /** @returns page time of the contact */
  async touch(act: string): Promise<number> {
    const { tablet } = this.#scribe;
    await tablet.shown(act);
    const box = await tablet.page.locator(`[data-act="${act}"]`).boundingBox();
    if (box === null) throw new Error(`${act} must be on the screen`);
    const to = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    this.#spentMs += this.#wayMs(to, Math.min(box.width, box.height)) + PRESS_MS;
    const atMs = Math.round(this.#fromMs + this.#spentMs);
    await this.#scribe.tapAt(act, atMs);
    this.#spentMs += PRESS_MS;
    this.#touches += 1;
    this.#at = to;
    return atMs;
  }

  async digits(text: string): Promise<void> {
    for (const digit of text) await this.touch(`key-${digit}`);
  }

  #wayMs(to: { readonly x: number; readonly y: number }, width: number): number {
    if (this.#at === null) return POINT_MS;
    const distance = Math.hypot(to.x - this.#at.x, to.y - this.#at.y);
    // The same key again, once its answer was seen.
    return distance === 0 ? EYE_MS : Math.log2(distance / width + 1) / THROUGHPUT_BIT_PER_MS;
  }
}
