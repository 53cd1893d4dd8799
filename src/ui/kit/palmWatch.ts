import { TOUCH } from './touchRules.ts';

/** Knows a palm by its size, or by the company it keeps: three contacts within a tenth of a second. */
export class PalmWatch {
  #recent: readonly { readonly pointerId: number; readonly mono: number }[] = [];

  /** The contacts that this one shows to be a palm, itself apart; `null` when it may be a finger. */
  see(
    event: Pick<PointerEvent, 'pointerId' | 'width' | 'height'>,
    mono: number,
    pxPerMm: number,
  ): readonly number[] | null {
    if (Math.max(event.width, event.height) > TOUCH.palmSizeMm * pxPerMm) {
      return [];
    }
    this.#recent = [...this.#recent, { pointerId: event.pointerId, mono }].filter(
      (down) => mono - down.mono <= TOUCH.palmMs,
    );
    const pointers = [...new Set(this.#recent.map((down) => down.pointerId))];
    return pointers.length < TOUCH.palmContacts ? null : pointers;
  }
}
