import type { Clock } from '../../journal/journal.ts';
import type { Stamp } from '../../record/entry.ts';
import { PalmWatch } from './palmWatch.ts';
import { actOf, capture, closestTarget, isText, press, release } from './touchLook.ts';
import {
  BOUNCE_MS,
  inside,
  judgeContact,
  nearestBox,
  TOUCH,
  type NotSure,
  type TargetForm,
} from './touchRules.ts';

/** A finished touch on a target: when the finger first met it, and whether it was meant. */
export interface Touch {
  readonly stamp: Stamp;
  readonly outcome: 'sure' | NotSure;
  readonly lastedMs: number;
}

export interface Target {
  readonly form: TargetForm;
  readonly onTouch: (touch: Touch) => void;
}

interface Contact {
  readonly target: Target;
  readonly element: HTMLElement;
  readonly down: Stamp;
  /** Since when a hold counts; earlier than `down` when a short lift was forgiven. */
  readonly heldFrom: number;
  readonly afterOtherTileMs: number | null;
  timer: ReturnType<typeof setTimeout> | null;
}

/**
 * All fingers on one screen. It listens at the root, so that a touch in a gap finds the nearest target, a palm is known
 * by the company it keeps, and a target that is drawn anew under a finger still gets its release.
 */
export class TouchBoard {
  readonly #root: HTMLElement;
  readonly #clock: Clock;
  readonly #pxPerMm: () => number;
  readonly #onIgnored: (act: string) => void;
  readonly #targets = new Map<HTMLElement, () => Target>();
  readonly #palms = new PalmWatch();
  readonly #contacts = new Map<number, Contact>();
  readonly #lastReleaseOf = new Map<string, number>();
  #lastTile: { readonly act: string; readonly mono: number } | null = null;
  #lastRelease: {
    readonly act: string;
    readonly mono: number;
    readonly x: number;
    readonly y: number;
  } | null = null;
  #lifted: {
    readonly element: HTMLElement;
    readonly heldFrom: number;
    readonly mono: number;
  } | null = null;

  constructor(
    root: HTMLElement,
    clock: Clock,
    settings: { readonly pxPerMm: () => number; readonly onIgnored: (act: string) => void },
  ) {
    this.#root = root;
    this.#clock = clock;
    this.#pxPerMm = settings.pxPerMm;
    this.#onIgnored = settings.onIgnored;
  }

  /** Makes an element a target. `target` is asked at the touch, so a drawn-anew handler needs no new place here. */
  readonly place = (element: HTMLElement, target: () => Target): (() => void) => {
    this.#targets.set(element, target);
    return () => this.#targets.delete(element);
  };

  /** Starts listening; returns the way to stop. */
  readonly listen = (): (() => void) => {
    const root = this.#root;
    const swallow = (event: Event): void => event.preventDefault();
    const noClickAfter = (event: Event): void => {
      if (!isText(event.target)) event.preventDefault();
    };
    root.addEventListener('pointerdown', this.#onDown);
    root.addEventListener('pointerup', this.#onUp);
    root.addEventListener('pointercancel', this.#onCancel);
    root.addEventListener('click', this.#onClick);
    root.addEventListener('contextmenu', swallow);
    // Or the browser makes a click of the touch afterwards, and that falls on whatever the touch has brought there.
    root.addEventListener('touchstart', noClickAfter, { passive: false });
    return () => {
      root.removeEventListener('pointerdown', this.#onDown);
      root.removeEventListener('pointerup', this.#onUp);
      root.removeEventListener('pointercancel', this.#onCancel);
      root.removeEventListener('click', this.#onClick);
      root.removeEventListener('contextmenu', swallow);
      root.removeEventListener('touchstart', noClickAfter);
    };
  };

  readonly #onDown = (event: PointerEvent): void => {
    if (isText(event.target)) {
      return;
    }
    const stamp = this.#clock.stampOf(event);
    const palm = this.#palms.see(event, stamp.mono, this.#pxPerMm());
    if (palm !== null) {
      this.#takeBack(palm);
      return;
    }
    const element = this.#hit(event);
    const target = element === null ? undefined : this.#targets.get(element)?.();
    if (element === null || target === undefined) {
      return;
    }
    if (this.#isBounce(element, target, stamp, event)) {
      this.#lastReleaseOf.set(actOf(element), stamp.mono);
      this.#onIgnored(actOf(element));
      return;
    }
    capture(this.#root, event.pointerId);
    const heldFrom =
      this.#lifted !== null &&
      this.#lifted.element === element &&
      stamp.mono - this.#lifted.mono <= TOUCH.holdGapMs
        ? this.#lifted.heldFrom
        : stamp.mono;
    const contact: Contact = {
      target,
      element,
      down: stamp,
      heldFrom,
      afterOtherTileMs: this.#afterOtherTile(element, target, stamp),
      timer: null,
    };
    this.#contacts.set(event.pointerId, contact);
    press(element, stamp);
    if (target.form === 'hold') {
      element.dataset['holding'] = '';
      contact.timer = setTimeout(
        () => this.#holdDone(event.pointerId, contact),
        TOUCH.holdMs - (stamp.mono - heldFrom),
      );
    }
  };

  readonly #onUp = (event: PointerEvent): void => this.#end(event, false);
  readonly #onCancel = (event: PointerEvent): void => this.#end(event, true);

  #end(event: PointerEvent, cancelled: boolean): void {
    const contact = this.#contacts.get(event.pointerId);
    if (contact === undefined) {
      return;
    }
    this.#contacts.delete(event.pointerId);
    const up = this.#clock.stampOf(event);
    const { element, target, down } = contact;
    this.#letGo(contact);
    const act = actOf(element);
    this.#lastReleaseOf.set(act, up.mono);
    this.#lastRelease = { act, mono: up.mono, x: event.clientX, y: event.clientY };
    const outcome = judgeContact({
      lastedMs: up.mono - down.mono,
      endedInside: this.#endsInside(element, event),
      cancelled,
      afterOtherTileMs: contact.afterOtherTileMs,
    });
    if (target.form === 'hold') {
      this.#endHold(contact, up, outcome === 'cancelled' || outcome === 'slippedOff');
    } else if (
      target.form === 'event' ||
      outcome === 'sure' ||
      outcome === 'heldLong' ||
      outcome === 'twoTiles'
    ) {
      target.onTouch({ stamp: down, outcome, lastedMs: up.mono - down.mono });
    }
  }

  #endHold(contact: Contact, up: Stamp, left: boolean): void {
    this.#lifted = null;
    if (left) {
      return;
    }
    if (up.mono - contact.heldFrom >= TOUCH.holdMs) {
      contact.target.onTouch({ stamp: contact.down, outcome: 'sure', lastedMs: TOUCH.holdMs });
    } else {
      this.#lifted = { element: contact.element, heldFrom: contact.heldFrom, mono: up.mono };
    }
  }

  #holdDone(pointerId: number, contact: Contact): void {
    if (this.#contacts.get(pointerId) === contact) {
      this.#contacts.delete(pointerId);
      this.#letGo(contact);
      this.#lifted = null;
      contact.target.onTouch({ stamp: contact.down, outcome: 'sure', lastedMs: TOUCH.holdMs });
    }
  }

  /** The keyboard, and whatever speaks for it; a click that a pointer made was dealt with at its release. */
  readonly #onClick = (event: MouseEvent): void => {
    const element = closestTarget(event.target);
    const target = element === null ? undefined : this.#targets.get(element)?.();
    if (event.detail !== 0 || element === null || target === undefined) {
      return;
    }
    target.onTouch({ stamp: this.#clock.stampOf(event), outcome: 'sure', lastedMs: 0 });
  };

  /** Touches that turn out to be a resting hand leave no trace. */
  #takeBack(pointerIds: readonly number[]): void {
    for (const pointerId of pointerIds) {
      const contact = this.#contacts.get(pointerId);
      if (contact !== undefined) {
        this.#contacts.delete(pointerId);
        this.#letGo(contact);
      }
    }
  }

  #letGo(contact: Contact): void {
    release(contact.element);
    if (contact.timer !== null) {
      clearTimeout(contact.timer);
    }
  }

  #hit(event: PointerEvent): HTMLElement | null {
    const direct = closestTarget(event.target);
    if (direct !== null && this.#targets.has(direct)) {
      return direct;
    }
    const elements = [...this.#targets.keys()].filter((element) => element.isConnected);
    const boxes = elements.map((element) => element.getBoundingClientRect());
    const index = nearestBox(
      boxes,
      event.clientX,
      event.clientY,
      TOUCH.halfGapMm * this.#pxPerMm(),
    );
    return index === null ? null : (elements[index] ?? null);
  }

  #endsInside(element: HTMLElement, event: PointerEvent): boolean {
    // Drawn anew under the finger: the place is gone, and nothing says that the finger left it.
    return (
      !element.isConnected ||
      inside(
        element.getBoundingClientRect(),
        event.clientX,
        event.clientY,
        TOUCH.grownMm * this.#pxPerMm(),
      )
    );
  }

  #isBounce(element: HTMLElement, target: Target, stamp: Stamp, event: PointerEvent): boolean {
    const act = actOf(element);
    const before = this.#lastReleaseOf.get(act);
    if (
      target.form !== 'hold' &&
      before !== undefined &&
      stamp.mono - before < BOUNCE_MS[target.form]
    ) {
      return true;
    }
    const last = this.#lastRelease;
    return (
      last !== null &&
      last.act !== act &&
      stamp.mono - last.mono < TOUCH.afterChangeMs &&
      Math.hypot(event.clientX - last.x, event.clientY - last.y) <
        TOUCH.afterChangeMm * this.#pxPerMm()
    );
  }

  #afterOtherTile(element: HTMLElement, target: Target, stamp: Stamp): number | null {
    if (target.form !== 'event') {
      return null;
    }
    const act = actOf(element);
    const last = this.#lastTile;
    this.#lastTile = { act, mono: stamp.mono };
    return last === null || last.act === act ? null : stamp.mono - last.mono;
  }
}
