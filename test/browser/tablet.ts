import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type BrowserContext, type CDPSession, type Page } from 'playwright-core';

/** Sizes in CSS px that every screen is driven and measured at. */
export const SIZES = {
  kneeboard: { width: 744, height: 1133 },
  tablet: { width: 1180, height: 820 },
  large: { width: 1366, height: 1024 },
  desk: { width: 1440, height: 900 },
} as const;

const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** A tap that nobody would take for a brush or a hold. */
const TAP_MS = 80;
/** How long ago, when it is sent, a contact ended. */
const AGE_MS = 20;
/** Real time after which a target that does not come is a fault. */
const PATIENCE_MS = 20_000;

/** What is touched: by its stable name, or by the beginning of it, the words on it, or the entry that it is about. */
export type Target =
  | string
  | {
      readonly act?: string;
      readonly starts?: string;
      readonly words?: string;
      readonly entry?: string;
    };

interface Contact {
  readonly x: number;
  readonly y: number;
  readonly radius?: number;
}

/**
 * One tablet: a browser profile on disk, driven by raw touches with their own timestamps. Time is a seam: the page's
 * wall clock, monotonic clock and event times are moved together, so a five-hour flight takes no waiting and no clock
 * appears to step.
 */
export class Tablet {
  private constructor(
    readonly profile: string,
    readonly context: BrowserContext,
    readonly page: Page,
    private readonly protocol: CDPSession,
    readonly origin: string,
    private readonly ownsProfile: boolean,
  ) {}

  /** @param profile a folder to keep between launches; absent makes one that `close` removes */
  static async launch(
    origin: string,
    options: {
      readonly profile?: string;
      readonly size?: { readonly width: number; readonly height: number };
      readonly executablePath?: string;
      /** Page time at start, UTC milliseconds; absent leaves the real clock. */
      readonly startAt?: number;
    } = {},
  ): Promise<Tablet> {
    const profile = options.profile ?? (await mkdtemp(join(tmpdir(), 'kneeline-profile-')));
    const context = await chromium.launchPersistentContext(profile, {
      executablePath: options.executablePath ?? process.env['CHROME_PATH'] ?? '/usr/bin/chromium',
      args: CHROMIUM_FLAGS,
      viewport: options.size ?? SIZES.tablet,
      hasTouch: true,
      acceptDownloads: true,
      timezoneId: 'Pacific/Chatham', // an odd zone: nothing may depend on it
    });
    if (options.startAt !== undefined) {
      await context.addInitScript(moveClocks, options.startAt - Date.now());
    }
    const page = context.pages()[0] ?? (await context.newPage());
    const protocol = await context.newCDPSession(page);
    return new Tablet(profile, context, page, protocol, origin, options.profile === undefined);
  }

  /** Another window of the same browser, over the same record. It closes with this tablet. */
  async newWindow(): Promise<Tablet> {
    const page = await this.context.newPage();
    const protocol = await this.context.newCDPSession(page);
    return new Tablet(this.profile, this.context, page, protocol, this.origin, false);
  }

  async open(path = '/'): Promise<void> {
    await this.page.goto(this.origin + path, { waitUntil: 'load' });
  }

  async close(): Promise<void> {
    await this.context.close();
    if (this.ownsProfile) {
      await rm(this.profile, { recursive: true, force: true });
    }
  }

  /** Touches the middle of a target. With `at`, the contact happens at that instant of page time. */
  async tap(target: Target, at?: number, heldMs = TAP_MS): Promise<void> {
    await this.contact(await this.aim(target, at, heldMs), heldMs);
  }

  /**
   * Raw contact: down, optional move, up. Timestamps are given to the browser, so no time passes here. `at` moves the
   * page's clocks first so that the contact's wall time is exactly that.
   */
  async touch(
    down: readonly Contact[],
    {
      at,
      heldMs = TAP_MS,
      up,
    }: {
      readonly at?: number | undefined;
      readonly heldMs?: number;
      readonly up?: readonly Contact[];
    } = {},
  ): Promise<void> {
    const contactMs = Date.now() - heldMs - AGE_MS;
    if (at !== undefined) {
      await this.page.evaluate((shiftMs) => {
        Reflect.get(globalThis, 'moveClocksTo')(shiftMs);
      }, at - contactMs);
    }
    const points = (contacts: readonly Contact[]) =>
      contacts.map(({ x, y, radius = 6 }, id) => ({ x, y, id, radiusX: radius, radiusY: radius }));
    await this.send('touchStart', points(down), contactMs);
    if (up !== undefined) {
      await this.send('touchMove', points(up), contactMs + heldMs - 1);
    }
    await this.send('touchEnd', [], contactMs + heldMs);
  }

  /** For keys that act while held: the finger stays down for so long by the page's clocks, and nobody waits here. */
  async hold(target: Target, holdMs: number, at?: number): Promise<void> {
    await this.tap(target, at, holdMs);
  }

  /** Waits until the target can be touched, and for nothing else. Fails naming what can be touched instead. */
  async shown(target: Target): Promise<void> {
    await this.aim(target, undefined, TAP_MS);
  }

  /** What can be touched at this moment. */
  async targets(): Promise<readonly Touchable[]> {
    return this.page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('[data-act]')]
        .filter((each) => each.getClientRects().length > 0 && !each.matches(':disabled'))
        .map((each) => ({
          act: each.dataset['act'] ?? '',
          words: each.innerText.trim(),
          pressed: each.ariaPressed === 'true',
        })),
    );
  }

  /** How many entries Fly says are saved, none being on the way. */
  async saved(): Promise<number> {
    return this.savedBeyond(-1);
  }

  /** Waits until more than `before` entries are saved, none is on the way, and the screen has caught up. */
  async savedBeyond(before: number): Promise<number> {
    const saved = await this.page.evaluate(savedInPage, { before, patienceMs: PATIENCE_MS });
    if (saved === null) {
      throw new Error(`no more than ${before} entries were saved`);
    }
    return saved;
  }

  /** Finds the target, brings it into view, and moves the clocks so that a contact now is at `at`. */
  private async aim(target: Target, at: number | undefined, heldMs: number): Promise<Aimed> {
    const wanted = typeof target === 'string' ? { act: target } : target;
    const aimed = await this.page.evaluate(aimInPage, {
      wanted: {
        act: wanted.act,
        starts: wanted.starts,
        words: wanted.words,
        entry: wanted.entry,
      },
      at,
      leadMs: heldMs + AGE_MS,
      patienceMs: PATIENCE_MS,
    });
    if (aimed === null) {
      const there = (await this.targets()).map(({ act }) => act).join(' ');
      throw new Error(`nothing to touch at ${JSON.stringify(wanted)}; there is: ${there}`);
    }
    return aimed;
  }

  private async contact({ x, y, contactMs }: Aimed, heldMs: number): Promise<void> {
    // Both are on their way before the first is answered: the browser keeps their order.
    await Promise.all([
      this.send('touchStart', [{ x, y, id: 0, radiusX: 6, radiusY: 6 }], contactMs),
      this.send('touchEnd', [], contactMs + heldMs),
    ]);
  }

  private async send(
    type: 'touchStart' | 'touchMove' | 'touchEnd',
    touchPoints: { x: number; y: number; id: number; radiusX: number; radiusY: number }[],
    atMs: number,
  ): Promise<void> {
    await this.protocol.send('Input.dispatchTouchEvent', {
      type,
      touchPoints,
      timestamp: atMs / 1000,
    });
  }
}

export interface Touchable {
  readonly act: string;
  readonly words: string;
  readonly pressed: boolean;
}

interface Aimed {
  readonly x: number;
  readonly y: number;
  /** Real time of the contact, a little past. */
  readonly contactMs: number;
}

/**
 * Runs in the page: the middle of the first target of that name that nothing covers, as soon as there is one. What is
 * out of view is scrolled to, as a finger would.
 */
async function aimInPage(given: {
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
async function savedInPage(given: {
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

/** Runs in the page before anything else. Wall clock, monotonic clock and event times move as one. */
function moveClocks(startShiftMs: number): void {
  const storageKey = 'test-clock-shift';
  let shiftMs = startShiftMs;
  try {
    // A reload goes on from where the page's time had got to.
    shiftMs = Number(sessionStorage.getItem(storageKey) ?? startShiftMs);
  } catch {
    // no storage in this frame: it keeps the start shift
  }
  const RealDate = Date;
  const realNow = RealDate.now.bind(RealDate);
  const realPerformanceNow = performance.now.bind(performance);
  const originShiftMs = shiftMs;
  const sinceStart = () => shiftMs - originShiftMs;
  class MovedDate extends RealDate {
    constructor(...given: readonly unknown[]) {
      if (given.length === 0) {
        super(realNow() + shiftMs);
      } else {
        super(...(given as [number]));
      }
    }
    static override now(): number {
      return realNow() + shiftMs;
    }
  }
  globalThis.Date = MovedDate as DateConstructor;
  performance.now = () => realPerformanceNow() + sinceStart();
  const timeStamp = Object.getOwnPropertyDescriptor(Event.prototype, 'timeStamp')?.get;
  Object.defineProperty(Event.prototype, 'timeStamp', {
    get(this: Event): number {
      return (timeStamp?.call(this) as number) + sinceStart();
    },
  });
  Object.assign(globalThis, {
    realNow,
    moveClocksTo: (newShiftMs: number) => {
      shiftMs = newShiftMs;
      try {
        sessionStorage.setItem(storageKey, String(shiftMs));
      } catch {
        // no storage: a reload starts again from the start shift
      }
    },
  });
}
