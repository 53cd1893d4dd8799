import type { Tablet, Target } from './tablet.ts';

/** From one contact to the next when nothing says when: no bounce, and not two tiles at once. */
const GAP_MS = 420;
/** Digits of a pad come faster. */
const DIGIT_GAP_MS = 210;
/** A touch may come so much after its time where another one was in the way, and is still that touch. */
const LATE_MS = 60;

/**
 * A person with one finger and a keyboard, who lives on the page's clocks: every touch has its own time, and the next
 * one comes a little later unless it is said when.
 */
export class Scribe {
  readonly tablet: Tablet;
  private lastMs: number;

  constructor(tablet: Tablet, nowMs: number) {
    this.tablet = tablet;
    this.lastMs = nowMs;
  }

  /** Page time of the last contact. */
  get nowMs(): number {
    return this.lastMs;
  }

  /** Lets page time pass without a touch. */
  waitUntil(ms: number): void {
    this.lastMs = Math.max(this.lastMs, ms - GAP_MS);
  }

  /** Whether so many touches fit in before `atMs`. */
  hasTime(atMs: number, touches: number): boolean {
    return this.lastMs + (touches + 1) * GAP_MS <= atMs;
  }

  async tap(target: Target): Promise<void> {
    await this.tapNext(target, GAP_MS);
  }

  async tapDigit(act: string): Promise<void> {
    await this.tapNext(act, DIGIT_GAP_MS);
  }

  /** @throws when earlier touches left no room for this one at its time */
  async tapAt(target: Target, atMs: number): Promise<void> {
    const free = this.lastMs + DIGIT_GAP_MS;
    if (free > atMs + LATE_MS) {
      throw new Error(`the touch on ${JSON.stringify(target)} is ${free - atMs} ms too late`);
    }
    this.lastMs = Math.max(atMs, free);
    await this.tablet.tap(target, this.lastMs);
  }

  async hold(target: Target, holdMs: number): Promise<void> {
    this.lastMs += GAP_MS;
    await this.tablet.hold(target, holdMs, this.lastMs);
    this.lastMs += holdMs;
  }

  /** Touches a field and types; what stood there is replaced. */
  async type(target: Target, text: string): Promise<void> {
    await this.tap(target);
    const { page } = this.tablet;
    const stands = await page.evaluate(() => {
      const field = document.activeElement;
      return field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement
        ? field.value
        : null;
    });
    if (stands === null) {
      throw new Error(`${JSON.stringify(target)} took no focus`);
    }
    if (stands !== '') {
      await page.keyboard.press('Control+A');
    }
    if (text !== '') {
      await page.keyboard.insertText(text);
    } else if (stands !== '') {
      await page.keyboard.press('Delete');
    }
  }

  /** Touches a field and types, unless it says so already. */
  async put(act: string, text: string): Promise<void> {
    await this.tablet.shown(act);
    if ((await this.tablet.page.locator(`[data-act="${act}"]`).inputValue()) !== text) {
      await this.type(act, text);
    }
  }

  async isThere(act: string): Promise<boolean> {
    return (await this.tablet.page.locator(`[data-act="${act}"]`).count()) > 0;
  }

  private async tapNext(target: Target, gapMs: number): Promise<void> {
    this.lastMs += gapMs;
    await this.tablet.tap(target, this.lastMs);
  }
}
