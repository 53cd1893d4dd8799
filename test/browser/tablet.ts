import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type BrowserContext, type CDPSession, type Page } from 'playwright-core';
import { BROWSER_ARGS, findBrowser } from '../../.tools/browser.mjs';
import { aimInPage, savedInPage, type Aimed } from './inPage.ts';
import { moveClocks } from './movedClocks.ts';

/** Sizes in CSS px that every screen is driven and measured at. */
export const SIZES = {
  kneeboard: { width: 744, height: 1133 },
  tablet: { width: 1180, height: 820 },
  large: { width: 1366, height: 1024 },
  desk: { width: 1440, height: 900 },
} as const;

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
  readonly profile: string;
  readonly context: BrowserContext;
  readonly page: Page;
  readonly origin: string;
  readonly #protocol: CDPSession;
  readonly #ownsProfile: boolean;

  private constructor(
    profile: string,
    context: BrowserContext,
    page: Page,
    protocol: CDPSession,
    origin: string,
    ownsProfile: boolean,
  ) {
    this.profile = profile;
    this.context = context;
    this.page = page;
    this.#protocol = protocol;
    this.origin = origin;
    this.#ownsProfile = ownsProfile;
  }

  /** @param profile a folder to keep between launches; absent makes one that `close` removes */
  static async launch(
    origin: string,
    options: {
      readonly profile?: string;
      readonly size?: { readonly width: number; readonly height: number };
      readonly executablePath?: string;
      /** Page time at start, UTC milliseconds; absent leaves the real clock. */
      readonly startAt?: number;
      /** An odd one where none is given: nothing may depend on it. */
      readonly timezone?: string;
    } = {},
  ): Promise<Tablet> {
    const profile = options.profile ?? (await mkdtemp(join(tmpdir(), 'kneeline-profile-')));
    const context = await chromium.launchPersistentContext(profile, {
      executablePath: options.executablePath ?? findBrowser() ?? '',
      args: BROWSER_ARGS,
      viewport: options.size ?? SIZES.tablet,
      hasTouch: true,
      acceptDownloads: true,
      timezoneId: options.timezone ?? 'Pacific/Chatham',
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
    if (this.#ownsProfile) {
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
    await this.#protocol.send('Input.dispatchTouchEvent', {
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
