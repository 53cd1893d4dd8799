import type { CSSProperties } from 'react';
import type { Clock, Journal } from '../../journal/journal.ts';
import type { SettingsStore } from '../kit/settings.ts';
import type { Located } from '../ports.ts';
import { TouchSurface } from '../kit/TouchSurface.tsx';
import { Banner } from './Banner.tsx';
import type { Cues } from './cues.ts';
import { FlyContext, type FlyWays } from './flyContext.ts';
import { FlyHome } from './FlyHome.tsx';
import { OpenPad } from './OpenPad.tsx';
import { HatchDefs } from './PanelShape.tsx';
import { useBackNotice } from './useBackNotice.ts';
import { useFlyModel } from './useFlyModel.ts';
import { useIdleHome } from './useIdleHome.ts';
import { usePosition } from './usePosition.ts';
import styles from './Fly.module.css';

/** In flight: one screen, no scrolling, one touch an event; the time of contact is the time of the event. */
export function Fly(props: {
  readonly journal: Journal;
  readonly clock: Clock;
  readonly settings: SettingsStore;
  readonly leave: FlyWays;
  /** Whether the screen is held awake right now. */
  readonly awake: () => boolean;
  /** Where the tablet is; absent in a replay, which is nowhere. */
  readonly locate?: () => Promise<Located>;
  /** Sound and pulse; the browser's own unless a test hands in others. */
  readonly cues?: Cues;
}) {
  const fly = useFlyModel(props);
  const { clock } = props;
  const { layout, ui, move } = fly;
  useIdleHome(fly);
  usePosition(fly, props.locate);
  useBackNotice(fly);
  const scale: CSSProperties & Readonly<Record<'--mm' | '--size', string | number>> = {
    '--mm': `${layout.pxPerMm}px`,
    '--size': layout.textSize,
  };
  return (
    <FlyContext value={fly}>
      <div style={scale} className={styles.scale} data-class={layout.screenClass}>
        <TouchSurface
          clock={clock}
          pxPerMm={layout.pxPerMm}
          onIgnored={() => move({ do: 'notice', words: 'Second touch ignored', at: clock.now() })}
          className={styles.fly}
        >
          <HatchDefs />
          <Banner />
          <FlyHome />
          {ui.pad === null ? null : (
            <OpenPad
              key={`${ui.pad.kind}-${'target' in ui.pad ? ui.pad.target : ''}`}
              pad={ui.pad}
            />
          )}
        </TouchSurface>
      </div>
    </FlyContext>
  );
}
