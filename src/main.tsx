import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { readTimeline } from './file/readTimeline.ts';
import { watchClockSteps } from './journal/clockSteps.ts';
import { checkDevice, requestPersistence } from './journal/deviceCheck.ts';
import { openShelf } from './journal/idbJournal.ts';
import { replayJournal } from './journal/replay.ts';
import { browserClock, browserSchedule, browserTicks } from './journal/stamp.ts';
import type { Entry } from './record/entry.ts';
import { App } from './ui/App.tsx';
import { NoRecord } from './ui/start/NoRecord.tsx';
import { BUILD_ID } from './ui/build.ts';
import { openSettings } from './ui/kit/settings.ts';
import { checkOffline, startOffline } from './ui/offline.ts';
import type { AppPorts } from './ui/ports.ts';
import { locateByBrowser } from './ui/receiver.ts';
import './ui/tokens.css';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html must hold an element with the id root');

const clock = browserClock();
const settings = openSettings(localStorage);

const page = createRoot(root);
try {
  const ports: AppPorts = {
    shelf: await openShelf({ clock, device: settings.get().device }),
    clock,
    settings,
    tools: { check: checkDevice, keepStorage: requestPersistence, offline: checkOffline },
    locate: locateByBrowser,
    build: BUILD_ID,
    demo: readDemo,
    replay: replayJournal,
    watchSteps: (given) =>
      watchClockSteps({ ticks: browserTicks, schedule: browserSchedule, ...given }),
  };
  page.render(
    <StrictMode>
      <App {...ports} />
    </StrictMode>,
  );
} catch (reason) {
  page.render(<NoRecord />);
  reportError(reason);
}

// There is no worker in development: an old build served from its cache would hide every change.
if (import.meta.env.PROD) void startOffline(() => {});

/** @throws Error when the file shipped with the app cannot be read */
async function readDemo(): Promise<readonly Entry[]> {
  const { body } = await fetch(`${import.meta.env.BASE_URL}demo/flight-a.packed`);
  if (body === null) throw new Error('the shipped demo flight must have bytes');
  const text = await new Response(body.pipeThrough(new DecompressionStream('gzip'))).text();
  const reading = readTimeline(text, text.length);
  if (reading.kind === 'refused') {
    throw new Error(`the shipped demo flight must be readable, got ${reading.refusal.reason}`);
  }
  return reading.entries;
}
