import { useEffect, useMemo, useState } from 'react';
import type { Clock } from '../../journal/journal.ts';
import { epochMs, type EpochMs } from '../../record/brand.ts';
import type { Entry } from '../../record/entry.ts';
import { Fly } from '../fly/Fly.tsx';
import { GroundButton } from '../kit/Ground.tsx';
import type { SettingsStore } from '../kit/settings.ts';
import type { AppPorts } from '../ports.ts';
import { replayClock } from './replayClock.ts';
import styles from './Replay.module.css';

const SPEEDS = [1, 20, 120] as const;
const FIRST_SPEED = 20;
const SKIP_MS = 10 * 60_000;

/** A recorded flight on Fly, as the scribe saw it. Nothing can be entered; the time is the flight's own. */
export function ReplayScreen(props: {
  readonly entries: readonly Entry[];
  readonly clock: Clock;
  readonly settings: SettingsStore;
  readonly replay: AppPorts['replay'];
  readonly awake: () => boolean;
  readonly onLeave: () => void;
  readonly onManual: () => void;
}) {
  const { entries, clock: real, replay } = props;
  const [first, last] = useMemo(() => spanOf(entries), [entries]);
  const clock = useMemo(() => replayClock(real, first), [real, first]);
  const [speed, setSpeed] = useState<number>(FIRST_SPEED);
  const [round, setRound] = useState(0);
  const shown = useMemo(() => {
    const flight = entries[0]?.flight;
    return flight === undefined ? null : { round, ...replay(flight, entries) };
  }, [entries, replay, round]);

  useEffect(() => {
    clock.setSpeed(speed);
    const step = (): void => {
      shown?.reveal(clock.now());
      if (clock.now() > last) {
        clock.setSpeed(0);
      }
    };
    step();
    const timer = setInterval(step, 250);
    return () => clearInterval(timer);
  }, [clock, speed, shown, last]);

  if (shown === null) {
    return null;
  }
  const again = (): void => {
    clock.moveTo(first);
    clock.setSpeed(speed);
    setRound(round + 1);
  };
  const skip = (): void => {
    clock.moveTo(epochMs(Math.min(last, clock.now() + SKIP_MS)));
    shown.reveal(clock.now());
  };
  return (
    <>
      <Fly
        key={round}
        journal={shown.journal}
        clock={clock}
        settings={props.settings}
        awake={props.awake}
        leave={{
          toBrief: props.onLeave,
          toDebrief: props.onLeave,
          toManual: props.onManual,
          onEnded: props.onLeave,
        }}
      />
      <div className={styles.bar} role="group" aria-label="Replay">
        <GroundButton act="replay.again" onPress={again}>
          Start
        </GroundButton>
        <GroundButton act="replay.pause" pressed={speed === 0} onPress={() => setSpeed(0)}>
          Stop
        </GroundButton>
        {SPEEDS.map((one) => (
          <GroundButton
            key={one}
            act={`replay.speed.${one}`}
            pressed={speed === one}
            onPress={() => setSpeed(one)}
          >
            {one} ×
          </GroundButton>
        ))}
        <GroundButton act="replay.skip" onPress={skip}>
          +10 min
        </GroundButton>
        <GroundButton act="replay.leave" strong onPress={props.onLeave}>
          Leave
        </GroundButton>
      </div>
    </>
  );
}

/** From a minute before the first touch to a minute after the last that was made in flight. */
function spanOf(entries: readonly Entry[]): readonly [EpochMs, EpochMs] {
  const walls = entries.map((entry) => entry.wall);
  const landed = entries.find((entry) => entry.kind === 'blocksOn')?.wall;
  const last = landed ?? Math.max(...walls);
  return [epochMs(Math.min(...walls)), epochMs(last + 60_000)];
}
