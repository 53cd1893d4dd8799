import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { checkOffline, startOffline } from '../../src/ui/offline.ts';
import { scriptAddress } from '../../src/ui/scriptAddress.ts';

class FakeWorker extends EventTarget {
  state = 'installing';
  become(state: string): void {
    this.state = state;
    this.dispatchEvent(new Event('statechange'));
  }
}

class FakeRegistration extends EventTarget {
  installing: FakeWorker | null = null;
  waiting: FakeWorker | null = null;
  active: FakeWorker | null = null;
  readonly update = vi.fn(() => Promise.resolve());
  /** A build begins to arrive. */
  find(): FakeWorker {
    this.installing = new FakeWorker();
    this.dispatchEvent(new Event('updatefound'));
    return this.installing;
  }
}

let registration: FakeRegistration;
let held: { name: string }[] = [];
const register = vi.fn(() => Promise.resolve(registration));
const getRegistration = vi.fn((): Promise<FakeRegistration | undefined> =>
  Promise.resolve(registration),
);
let stop = () => {};

beforeEach(() => {
  registration = new FakeRegistration();
  held = [];
  vi.stubGlobal('navigator', {
    serviceWorker: { register, getRegistration },
    locks: { query: () => Promise.resolve({ held }) },
  });
});

afterEach(() => {
  stop();
  vi.unstubAllGlobals();
  vi.clearAllMocks();
});

/** The window is shown again; what that sets off has run when this resolves. */
async function showWindow(): Promise<void> {
  document.dispatchEvent(new Event('visibilitychange'));
  await new Promise((resolve) => setTimeout(resolve));
}

describe('starting offline', () => {
  it('registers the one worker for the whole app and has it asked for again each time', async () => {
    stop = await startOffline(() => {});
    expect(register.mock.calls).toEqual([['/worker.js', { scope: '/', updateViaCache: 'none' }]]);
  });

  it('tells of a build that waits already', async () => {
    registration.active = new FakeWorker();
    registration.waiting = new FakeWorker();
    const onWaiting = vi.fn();
    stop = await startOffline(onWaiting);
    expect(onWaiting).toHaveBeenCalledOnce();
  });

  it('tells of a newer build once it has come whole, and not before', async () => {
    registration.active = new FakeWorker();
    const onWaiting = vi.fn();
    stop = await startOffline(onWaiting);
    const arriving = registration.find();
    expect(onWaiting).not.toHaveBeenCalled();
    arriving.become('installed');
    expect(onWaiting).toHaveBeenCalledOnce();
  });

  it.each([
    ['that was refused', 'redundant', true],
    ['that is the first of all', 'installed', false],
  ])('keeps quiet about a build %s', async (_, state, replaces) => {
    registration.active = replaces ? new FakeWorker() : null;
    const onWaiting = vi.fn();
    stop = await startOffline(onWaiting);
    registration.find().become(state);
    expect(onWaiting).not.toHaveBeenCalled();
  });

  it('looks for a newer build when the window is shown', async () => {
    stop = await startOffline(() => {});
    await showWindow();
    expect(registration.update).toHaveBeenCalledOnce();
  });

  it('never looks while a flight is open', async () => {
    stop = await startOffline(() => {});
    held = [{ name: 'kneeline-flight-open' }];
    await showWindow();
    expect(registration.update).not.toHaveBeenCalled();
  });

  it('looks no more once stopped', async () => {
    stop = await startOffline(() => {});
    stop();
    await showWindow();
    expect(registration.update).not.toHaveBeenCalled();
  });

  it('does nothing where there are no workers', async () => {
    vi.stubGlobal('navigator', {});
    stop = await startOffline(() => {});
    expect(await checkOffline()).toMatchObject({ kind: 'notReady', because: 'unsupported' });
  });
});

describe('the check of what is kept', () => {
  it('says that nothing was installed', async () => {
    getRegistration.mockResolvedValueOnce(undefined);
    expect(await checkOffline()).toMatchObject({ because: 'notInstalled' });
  });

  it('says that the build is still arriving', async () => {
    registration.find();
    expect(await checkOffline()).toMatchObject({ because: 'stillInstalling' });
  });

  it.each([
    [
      'holds another build',
      { build: 'other', cacheName: 'c', files: [{ url: 'u', revision: 'r' }] },
      'otherBuild',
    ],
    ['lists no file', { build: 'other', cacheName: 'c', files: [] }, 'noAnswer'],
    ['answers something else', 'ready', 'noAnswer'],
  ])('is not ready when the worker %s', async (_, answer, because) => {
    registration.active = Object.assign(new FakeWorker(), {
      postMessage: (__: unknown, [port]: readonly MessagePort[]) => port?.postMessage(answer),
    });
    expect(await checkOffline()).toMatchObject({ kind: 'notReady', because });
  });
});

describe('the address of a worker', () => {
  it('is vouched for by its policy, once, and for no other address', () => {
    const createPolicy = vi.fn((name: string) => ({
      createScriptURL: (address: string) => `${name} vouches for ${address}`,
    }));
    vi.stubGlobal('trustedTypes', { createPolicy });
    expect(scriptAddress('parser', '/a.js')).toBe('parser vouches for /a.js');
    expect(scriptAddress('parser', '/a.js')).toBe('parser vouches for /a.js');
    expect(createPolicy).toHaveBeenCalledOnce();
    expect(() => scriptAddress('parser', '/b.js')).toThrow('policy parser vouches for /a.js only');
  });
});
