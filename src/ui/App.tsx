import { useCallback, useEffect, useState } from 'react';
import type { Journal } from '../journal/journal.ts';
import type { FlightId } from '../record/brand.ts';
import { Brief } from './brief/Brief.tsx';
import { Debrief } from './debrief/Debrief.tsx';
import { Fly } from './fly/Fly.tsx';
import { Manual } from './manual/Manual.tsx';
import type { AppPorts } from './ports.ts';
import { ReplayScreen } from './replay/ReplayScreen.tsx';
import { startingPlace } from './start/startingPlace.ts';
import { StartScreen } from './start/StartScreen.tsx';
import { useAwake } from './useAwake.ts';
import { useBackGuard } from './useBackGuard.ts';
import { useDeviceNotes } from './useDeviceNotes.ts';

type Screen = 'starting' | 'start' | 'brief' | 'fly' | 'debrief' | 'replay' | 'manual';

const UNREADABLE =
  'The record on this tablet could not be opened. Close other windows of the app, then reload.';
const FLIGHT_UNREADABLE = 'That flight could not be read. Try again, or open its file on Debrief.';

/**
 * The three phases of work and the ways between them. A flight that was open when the app last ran opens Fly at once;
 * a tablet that holds nothing yet gets the start screen.
 */
export function App(ports: AppPorts) {
  const { shelf, clock, settings, build } = ports;
  const [place, setPlace] = useState<{ readonly now: Screen; readonly before: Screen }>({
    now: 'starting',
    before: 'starting',
  });
  const [journal, setJournal] = useState<Journal | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const go = useCallback((screen: Screen): void => {
    setTrouble(null);
    setPlace(({ now }) => ({ now: screen, before: now }));
  }, []);

  useEffect(() => {
    let over = false;
    startingPlace({ shelf, clock, build }).then(
      (start) => {
        if (!over) {
          setJournal(start.journal);
          go(start.screen);
        }
      },
      () => {
        if (!over) {
          go('start');
          setTrouble(UNREADABLE);
        }
      },
    );
    return () => {
      over = true;
    };
  }, [shelf, clock, build, go]);

  const awake = useAwake(place.now === 'fly');
  useDeviceNotes(place.now === 'starting' ? null : journal, clock, ports.watchSteps, awake);
  useBackGuard(place.now === 'fly');

  const openFlight = async (flight: FlightId): Promise<Journal> => {
    const opened = await shelf.journalOf(flight);
    setJournal(opened);
    return opened;
  };
  const openDemo = async (): Promise<void> => {
    const { flight } = await shelf.takeIn(await ports.demo());
    await openFlight(flight);
  };
  const goTo = (screen: 'fly' | 'debrief') => (flight?: FlightId) => {
    if (flight === undefined || flight === journal?.flight) {
      go(journal === null ? 'brief' : screenFor(screen, journal));
      return;
    }
    openFlight(flight).then(
      (opened) => go(screenFor(screen, opened)),
      () => setTrouble(FLIGHT_UNREADABLE),
    );
  };

  switch (place.now) {
    case 'starting':
      return null;
    case 'manual':
      return <Manual onBack={() => go(place.before)} />;
    case 'fly':
      return journal === null ? null : (
        <Fly
          journal={journal}
          clock={clock}
          settings={settings}
          leave={{
            toBrief: () => go('brief'),
            toDebrief: () => go('debrief'),
            toManual: () => go('manual'),
            onEnded: () => go('debrief'),
          }}
        />
      );
    case 'replay':
      return journal === null ? null : (
        <ReplayScreen
          entries={journal.entries()}
          clock={clock}
          settings={settings}
          replay={ports.replay}
          onLeave={() => go('debrief')}
          onManual={() => go('manual')}
        />
      );
    case 'debrief':
      return journal === null ? null : (
        <Debrief
          journal={journal}
          shelf={shelf}
          clock={clock}
          build={build}
          onBrief={() => go('brief')}
          onFly={goTo('fly')}
        />
      );
    case 'brief':
      return (
        <>
          {trouble === null ? null : <p role="alert">{trouble}</p>}
          <Brief
            shelf={shelf}
            journal={journal}
            clock={clock}
            settings={settings}
            tools={ports.tools}
            onOpened={setJournal}
            onFly={goTo('fly')}
            onDebrief={goTo('debrief')}
          />
        </>
      );
    case 'start':
      return (
        <StartScreen
          trouble={trouble}
          onDemo={() => openDemo().then(() => go('debrief'))}
          onReplay={() => openDemo().then(() => go('replay'))}
          onSetUp={async () => {
            // The demo's flight sheet is one to copy from; without it a blank still serves.
            await ports
              .demo()
              .then(shelf.takeIn)
              .catch(() => undefined);
            go('brief');
          }}
          onManual={() => go('manual')}
        />
      );
    default:
      return place.now satisfies never;
  }
}

/** A flight that nobody writes here any more is not flown again: Fly shows it as a replay. */
function screenFor(screen: 'fly' | 'debrief', journal: Journal): Screen {
  const over = journal.entries().some((entry) => entry.kind === 'flightClosed');
  return screen === 'fly' && (journal.recorder() === null || over) ? 'replay' : screen;
}
