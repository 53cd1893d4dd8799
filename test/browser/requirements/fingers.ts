import type { CDPSession } from 'playwright-core';
import type { Scribe } from '../scribe.ts';

/** How long ago, when it is sent, a contact was. */
const AGE_MS = 20;
const USUAL_RADIUS_PX = 6;

interface Point {
  readonly x: number;
  readonly y: number;
  readonly radiusX: number;
  readonly radiusY: number;
}

/**
 * Fingers that come, move and go one by one, each at its own instant of page time. The clocks of the page go along, so
 * a hold or a gap takes no waiting; an instant is never before the last one.
 */
export class Fingers {
  readonly #scribe: Scribe;
  readonly #protocol: CDPSession;
  readonly #down = new Map<number, Point>();

  private constructor(scribe: Scribe, protocol: CDPSession) {
    this.#scribe = scribe;
    this.#protocol = protocol;
  }

  static async of(scribe: Scribe): Promise<Fingers> {
    const { tablet } = scribe;
    return new Fingers(scribe, await tablet.context.newCDPSession(tablet.page));
  }

  /** Middle of a target. */
  async middleOf(act: string): Promise<{ readonly x: number; readonly y: number }> {
    const { left, top, right, bottom } = await this.boxOf(act);
    return { x: (left + right) / 2, y: (top + bottom) / 2 };
  }

  async boxOf(act: string) {
    await this.#scribe.tablet.shown(act);
    const box = await this.#scribe.tablet.page.locator(`[data-act="${act}"]`).boundingBox();
    if (box === null) throw new Error(`${act} must be on the screen`);
    const { x, y, width, height } = box;
    return { left: x, top: y, right: x + width, bottom: y + height };
  }

  async down(
    finger: number,
    at: { readonly x: number; readonly y: number },
    ms: number,
    radiusPx = USUAL_RADIUS_PX,
  ): Promise<void> {
    this.#down.set(finger, { x: at.x, y: at.y, radiusX: radiusPx, radiusY: radiusPx });
    await this.#send({ type: 'touchStart', seenAs: 'pointerdown', points: this.#allDown() }, ms);
  }

  async move(
    finger: number,
    to: { readonly x: number; readonly y: number },
    ms: number,
  ): Promise<void> {
    const point = this.#down.get(finger);
    if (point === undefined) throw new Error(`finger ${finger} must be down before it moves`);
    this.#down.set(finger, { ...point, ...to });
    await this.#send({ type: 'touchMove', seenAs: 'pointermove', points: this.#allDown() }, ms);
  }

  async up(finger: number, ms: number): Promise<void> {
    const point = this.#down.get(finger);
    if (point === undefined) throw new Error(`finger ${finger} must be down before it lifts`);
    this.#down.delete(finger);
    // An empty end lifts all that are down; one that names a point lifts that one.
    const lifted = this.#down.size === 0 ? [] : [{ ...point, id: finger }];
    await this.#send({ type: 'touchEnd', seenAs: 'pointerup', points: lifted }, ms);
  }

  /** What rotation and a switch of apps do to a touch. */
  async cancelAll(ms: number): Promise<void> {
    this.#down.clear();
    await this.#send({ type: 'touchCancel', seenAs: 'pointercancel', points: [] }, ms);
  }

  /**
   * One finger down and up again and again, sent in one go: what is held runs by the page's own timer, and a busy
   * machine must not make a hold longer than it is.
   *
   * @param spans milliseconds after `ms` of each contact and of its lift, together under two seconds
   */
  async held(
    act: string,
    ms: number,
    spans: readonly (readonly [number, number])[],
  ): Promise<void> {
    const { x, y } = await this.middleOf(act);
    const touchPoints = [{ x, y, radiusX: USUAL_RADIUS_PX, radiusY: USUAL_RADIUS_PX, id: 0 }];
    const lastedMs = spans.at(-1)?.[1] ?? 0;
    const realMs = await this.#moveClocks('pointerup', ms, AGE_MS + lastedMs, spans.length);
    const sent = spans.flatMap(([downMs, upMs]) => [
      { type: 'touchStart' as const, touchPoints, timestamp: (realMs + downMs) / 1000 },
      { type: 'touchEnd' as const, touchPoints: [], timestamp: (realMs + upMs) / 1000 },
    ]);
    await Promise.all(sent.map((event) => this.#protocol.send('Input.dispatchTouchEvent', event)));
    await this.#seen();
  }

  /** One finger on the middle of a target. */
  async tap(act: string, ms: number, heldMs = 80): Promise<void> {
    await this.down(0, await this.middleOf(act), ms);
    await this.up(0, ms + heldMs);
  }

  #allDown() {
    return [...this.#down].map(([id, point]) => ({ ...point, id }));
  }

  /** Sends, and waits until the page has been told. */
  async #send({ type, seenAs, points }: Sending, ms: number): Promise<void> {
    const realMs = await this.#moveClocks(seenAs, ms, AGE_MS, 1);
    await this.#protocol.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: [...points],
      timestamp: realMs / 1000,
    });
    await this.#seen();
  }

  /** Makes a contact so long ago happen at `ms` of page time, and listens for the page to be told so many times. */
  #moveClocks(seenAs: string, ms: number, agoMs: number, times: number): Promise<number> {
    return this.#scribe.tablet.page.evaluate(
      ({ name, at, ageMs, count }) => {
        const realNow: () => number = Reflect.get(globalThis, 'realNow');
        const contact = realNow() - ageMs;
        Reflect.get(globalThis, 'moveClocksTo')(at - contact);
        const contactSeen = new Promise<void>((resolve) => {
          let seen = 0;
          const onSeen = () => {
            seen += 1;
            if (seen === count) {
              window.removeEventListener(name, onSeen, { capture: true });
              resolve();
            }
          };
          window.addEventListener(name, onSeen, { capture: true });
        });
        Object.assign(globalThis, { contactSeen });
        return contact;
      },
      { name: seenAs, at: ms, ageMs: agoMs, count: times },
    );
  }

  async #seen(): Promise<void> {
    const { page } = this.#scribe.tablet;
    await page.evaluate(() => Reflect.get(globalThis, 'contactSeen').then(() => undefined));
  }
}

interface Sending {
  readonly type: 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel';
  readonly seenAs: 'pointerdown' | 'pointermove' | 'pointerup' | 'pointercancel';
  readonly points: readonly (Point & { readonly id: number })[];
}
