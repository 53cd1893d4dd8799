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
  async tap(act: string, at?: number, heldMs = 80): Promise<void> {
    await this.touch([await this.middleOf(`[data-act="${act}"]`)], { at, heldMs });
  }

  async tapSelector(selector: string, at?: number, heldMs = 80): Promise<void> {
    await this.touch([await this.middleOf(selector)], { at, heldMs });
  }

  /**
   * Raw contact: down, optional move, up. Timestamps are given to the browser, so no time passes here. `at` moves the
   * page's clocks first so that the contact's wall time is exactly that.
   */
  async touch(
    down: readonly Contact[],
    {
      at,
      heldMs = 80,
      up,
    }: {
      readonly at?: number | undefined;
      readonly heldMs?: number;
      readonly up?: readonly Contact[];
    } = {},
  ): Promise<void> {
    const contactMs = Date.now() - heldMs - 20;
    if (at !== undefined) {
      await this.page.evaluate((shiftMs) => {
        (window as unknown as { moveClocksTo: (ms: number) => void }).moveClocksTo(shiftMs);
      }, at - contactMs);
    }
    const points = (contacts: readonly Contact[]) =>
      contacts.map(({ x, y, radius = 6 }, id) => ({ x, y, id, radiusX: radius, radiusY: radius }));
    await this.protocol.send('Input.dispatchTouchEvent', {
      type: 'touchStart',
      touchPoints: points(down),
      timestamp: contactMs / 1000,
    });
    if (up !== undefined) {
      await this.protocol.send('Input.dispatchTouchEvent', {
        type: 'touchMove',
        touchPoints: points(up),
        timestamp: (contactMs + heldMs - 1) / 1000,
      });
    }
    await this.protocol.send('Input.dispatchTouchEvent', {
      type: 'touchEnd',
      touchPoints: [],
      timestamp: (contactMs + heldMs) / 1000,
    });
  }

  /** Keeps a finger down in real time: for keys that act while held. */
  async hold(act: string, holdMs: number): Promise<void> {
    const point = { ...(await this.middleOf(`[data-act="${act}"]`)), id: 0 };
    await this.protocol.send('Input.dispatchTouchEvent', {
      type: 'touchStart',
      touchPoints: [point],
    });
    await this.page.waitForTimeout(holdMs);
    await this.protocol.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  }

  async middleOf(selector: string): Promise<{ x: number; y: number }> {
    const target = this.page.locator(selector).first();
    await target.waitFor({ state: 'visible' });
    const box = await target.boundingBox();
    if (box === null) {
      throw new Error(`no box for ${selector}`);
    }
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }
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
