/*
 * Functions that are sent into the page: each must stand on its own, for nothing around it goes with it.
 */

export interface Aimed {
  readonly x: number;
  readonly y: number;
  /** Real time of the contact, a little past. */
  readonly contactMs: number;
}

/**
 * Runs in the page: the middle of the first target of that name that nothing covers, as soon as there is one. What is
 * out of view is scrolled to, as a finger would.
 */
export async function aimInPage(given: {
  readonly wanted: {
    readonly act: string | undefined;
    readonly starts: string | undefined;
    readonly words: string | undefined;
    readonly entry: string | undefined;
  };
  readonly at: number | undefined;
  readonly leadMs: number;
  readonly patienceMs: number;
}): Promise<Aimed | null> {
  const { wanted, at, leadMs, patienceMs } = given;
  const realNow: () => number = Reflect.get(globalThis, 'realNow') ?? Date.now;
  const find = () => {
    for (const each of document.querySelectorAll<HTMLElement>('[data-act]')) {
      const act = each.dataset['act'] ?? '';
      if (
        (wanted.act === undefined || act === wanted.act) &&
        (wanted.starts === undefined || act.startsWith(wanted.starts)) &&
        (wanted.words === undefined || each.innerText.trim() === wanted.words) &&
        (wanted.entry === undefined || each.dataset['entry'] === wanted.entry) &&
        !each.matches(':disabled')
      ) {
        const middle = () => {
          const box = each.getBoundingClientRect();
          return { x: box.x + box.width / 2, y: box.y + box.height / 2, width: box.width };
        };
        const free = ({ x, y }: { readonly x: number; readonly y: number }) => {
          const top = document.elementFromPoint(x, y);
          return top !== null && each.contains(top);
        };
        if (middle().width > 0 && !free(middle())) {
          each.scrollIntoView({ block: 'center', inline: 'center' });
        }
        if (middle().width > 0 && free(middle())) {
          return middle();
        }
      }
    }
    return null;
  };
  const until = realNow() + patienceMs;
  let place = find();
  while (place === null && realNow() < until) {
    await new Promise((resolve) => requestAnimationFrame(resolve));
    place = find();
  }
  if (place === null) {
    return null;
  }
  const contactMs = realNow() - leadMs;
  if (at !== undefined) {
    Reflect.get(globalThis, 'moveClocksTo')(at - contactMs);
  }
  return { x: place.x, y: place.y, contactMs };
}

/** Runs in the page. The last steps let what was asked of React before now be drawn. */
export async function savedInPage(given: {
  readonly before: number;
  readonly patienceMs: number;
}): Promise<number | null> {
  const realNow: () => number = Reflect.get(globalThis, 'realNow') ?? Date.now;
  const until = realNow() + given.patienceMs;
  const look = () => {
    const shown = document.querySelector<HTMLElement>('[data-saved]')?.dataset;
    const saved = Number(shown?.['saved'] ?? -1);
    return shown?.['pending'] === '0' && saved > given.before ? saved : null;
  };
  const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
  const turn = () =>
    new Promise((resolve) => {
      const { port1, port2 } = new MessageChannel();
      port1.addEventListener('message', resolve, { once: true });
      port1.start();
      port2.postMessage(null);
    });
  while (look() === null && realNow() < until) {
    await frame();
  }
  for (let turns = 0; turns < 3; turns += 1) {
    await turn();
  }
  return look();
}
