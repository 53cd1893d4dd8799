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
    const { page } = this.#scribe.tablet;
    const realMs = await page.evaluate(
      ({ name, at, ageMs }) => {
        const realNow: () => number = Reflect.get(globalThis, 'realNow');
        const contact = realNow() - ageMs;
        Reflect.get(globalThis, 'moveClocksTo')(at - contact);
        const contactSeen = new Promise((resolve) => {
          window.addEventListener(name, resolve, { once: true, capture: true });
        });
        Object.assign(globalThis, { contactSeen });
        return contact;
      },
      { name: seenAs, at: ms, ageMs: AGE_MS },
    );
    await this.#protocol.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: [...points],
      timestamp: realMs / 1000,
    });
    await page.evaluate(() => Reflect.get(globalThis, 'contactSeen').then(() => undefined));
  }
}

interface Sending {
  readonly type: 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel';
  readonly seenAs: 'pointerdown' | 'pointermove' | 'pointerup' | 'pointercancel';
  readonly points: readonly (Point & { readonly id: number })[];
}
