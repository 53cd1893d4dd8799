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
import { useFace } from './useFace.ts';

type Screen = 'starting' | 'start' | 'brief' | 'fly' | 'debrief' | 'replay' | 'manual';

const UNREADABLE =
  'The record on this tablet could not be opened. Close other windows of the app, then reload.';
const NO_FLIGHT = 'There is no flight on this tablet yet. Set one up, or look round the demo.';
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
  /** The flight that this tablet flies, or flew last. */
  const [journal, setJournal] = useState<Journal | null>(null);
  /** The flight that Debrief and the replay show: that one, or another on this tablet. */
  const [looked, setLooked] = useState<Journal | null>(null);
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

  useFace(settings, place.now === 'fly' || place.now === 'replay' ? 'air' : 'ground');
  const awake = useAwake(place.now === 'fly' || place.now === 'replay');
  const isAwake = useCallback(() => awake.current, [awake]);
  useDeviceNotes(place.now === 'starting' ? null : journal, clock, ports.watchSteps, awake);
  useBackGuard(place.now === 'fly');

  const openDemo = async (): Promise<void> => {
    const { flight } = await shelf.takeIn(await ports.demo());
    setLooked(await shelf.journalOf(flight));
  };
  const fly = (flown: Journal): void => {
    if (isOver(flown)) {
      setLooked(flown);
      go('replay');
    } else {
      setJournal(flown);
      go('fly');
    }
  };
  const debrief = (shown: Journal): void => {
    setLooked(shown);
    go('debrief');
  };
  const find = async (flight: FlightId | undefined): Promise<Journal | null> => {
    const id = flight ?? looked?.flight ?? (await shelf.flights())[0]?.flight;
    return id === undefined ? null : shelf.journalOf(id);
  };
  const toward = (then: (found: Journal) => void) => (flight?: FlightId) => {
    if (journal !== null && (flight ?? journal.flight) === journal.flight) {
      then(journal);
      return;
    }
    find(flight).then(
      (found) => (found === null ? setTrouble(NO_FLIGHT) : then(found)),
      () => setTrouble(FLIGHT_UNREADABLE),
    );
  };
  /** From Debrief: back to the flight in the air whatever was looked at; on the ground, the replay of what was. */
  const flyFromDebrief = (): void => {
    if (journal !== null && (journal === looked || !isOver(journal))) {
      fly(journal);
    } else {
      go('replay');
    }
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
          awake={isAwake}
          locate={ports.locate}
          leave={{
            toBrief: () => go('brief'),
            toDebrief: () => debrief(journal),
            toManual: () => go('manual'),
            onEnded: () => debrief(journal),
          }}
        />
      );
    case 'replay':
      return looked === null ? null : (
        <ReplayScreen
          entries={looked.entries()}
          clock={clock}
          settings={settings}
          replay={ports.replay}
          awake={isAwake}
          onLeave={() => go('debrief')}
          onManual={() => go('manual')}
        />
      );
    case 'debrief':
      return looked === null ? null : (
        <Debrief
          key={looked.flight}
          journal={looked}
          shelf={shelf}
          clock={clock}
          build={build}
          onBrief={() => go('brief')}
          onFly={flyFromDebrief}
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
            onFly={toward(fly)}
            onDebrief={toward(debrief)}
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

/** A flight that nobody flies here any more: Fly shows it as a replay. */
function isOver(journal: Journal): boolean {
  return (
    journal.recorder() === null || journal.entries().some((entry) => entry.kind === 'flightClosed')
  );
}
