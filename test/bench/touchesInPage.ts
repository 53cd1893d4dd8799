/** What a page saw of the touches on it. */
export interface TouchesSeen {
  /** From contact to the frame that shows the pressed look, milliseconds, a touch each. */
  readonly pressed: readonly number[];
  /** From release to the frame that shows the entry as saved, milliseconds, an entry each. */
  readonly saved: readonly number[];
  /** Layout shift that no touch just before it explains: the sum, as the measure has it. */
  readonly shift: number;
  /** Names of keys that moved, touch or no touch; those of the panel of details come with each entry anew. */
  readonly movedKeys: readonly string[];
}

/**
 * Runs in the page, and stands on its own. A frame is over when the task after it runs; where the browser itself says
 * when the frame of a contact was shown, the later of both counts.
 */
export function watchTouches(): void {
  const shownAfter = new Map<number, number>();
  const saved: number[] = [];
  const movedKeys: string[] = [];
  let shift = 0;
  let releasedAt: number | null = null;
  const afterFrame = (then: () => void) => {
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.addEventListener('message', then, { once: true });
      port1.start();
      port2.postMessage(null);
    });
  };
  const later = (contact: number, ms: number) =>
    shownAfter.set(contact, Math.max(shownAfter.get(contact) ?? 0, ms));
  window.addEventListener(
    'pointerdown',
    ({ timeStamp }) => {
      const look = () => {
        const pressed = document.querySelector('[data-down]');
        if (pressed === null || getComputedStyle(pressed).boxShadow === 'none') return;
        const shown = performance.now();
        later(timeStamp, shown - timeStamp);
      };
      afterFrame(look);
    },
    true,
  );
  window.addEventListener('pointerup', ({ timeStamp }) => (releasedAt = timeStamp), true);
  // The options are the browser's, not yet TypeScript's.
  const eventTiming = { type: 'event', durationThreshold: 16 };
  new PerformanceObserver((list) => {
    for (const { name, startTime, duration } of list.getEntries()) {
      if (name === 'pointerdown') later(startTime, duration);
    }
  }).observe(eventTiming);
  new MutationObserver(() => {
    const from = releasedAt;
    releasedAt = null;
    if (from !== null) afterFrame(() => saved.push(performance.now() - from));
  }).observe(document.body, {
    subtree: true,
    attributes: true,
    attributeFilter: ['data-saved'],
  });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) {
      if (Reflect.get(entry, 'hadRecentInput') === false) shift += Reflect.get(entry, 'value');
      const sources: readonly { readonly node: Node | null }[] = Reflect.get(entry, 'sources');
      for (const { node } of sources) {
        const key = node instanceof HTMLElement ? node : null;
        const act = key?.dataset['act'];
        if (act !== undefined && key?.closest('[aria-label="Details"]') === null) {
          movedKeys.push(act);
        }
      }
    }
  }).observe({ type: 'layout-shift' });
  Object.assign(globalThis, {
    touchesSeen: (): TouchesSeen => ({
      pressed: [...shownAfter.values()],
      saved,
      shift,
      movedKeys,
    }),
  });
}
