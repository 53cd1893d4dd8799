import { useState } from 'react';
import { GroundButton } from '../kit/Ground.tsx';
import styles from './Start.module.css';

/** What a tablet that holds nothing yet offers: look round a whole flight, or set up one's own. */
export function StartScreen(props: {
  readonly trouble: string | null;
  /** Each resolves when the next screen can be shown, and rejects with nothing kept. */
  readonly onDemo: () => Promise<void>;
  readonly onReplay: () => Promise<void>;
  readonly onSetUp: () => Promise<void>;
  readonly onManual: () => void;
}) {
  const [failed, setFailed] = useState(false);
  const run = (work: () => Promise<void>) => (): void => {
    setFailed(false);
    work().catch(() => setFailed(true));
  };
  return (
    <main className={styles.start}>
      <h1>Kneeline</h1>
      <p className={styles.lead}>
        The scribe’s log of a laminar-flow research flight, on one timeline, with no network.
      </p>
      <div className={styles.ways}>
        <div>
          <GroundButton act="start.demo" strong onPress={run(props.onDemo)}>
            <b>Look round the demo flight</b>
            <span>A whole invented flight on Debrief, yours to search and amend</span>
          </GroundButton>
        </div>
        <div>
          <GroundButton act="start.setup" strong onPress={run(props.onSetUp)}>
            <b>Set up my flight</b>
            <span>A flight sheet from a blank, or from the demo’s</span>
          </GroundButton>
        </div>
        <div>
          <GroundButton act="start.replay" onPress={run(props.onReplay)}>
            <b>Replay the demo flight</b>
            <span>Fly as the scribe saw it, sped up</span>
          </GroundButton>
        </div>
        <div>
          <GroundButton act="start.manual" onPress={props.onManual}>
            <b>Manual</b>
            <span>Two pages, on this tablet</span>
          </GroundButton>
        </div>
      </div>
      {props.trouble !== null || failed ? (
        <p role="alert" className={styles.trouble}>
          {props.trouble ?? 'The demo flight could not be read. Reload the app, then touch again.'}
        </p>
      ) : null}
      <p className={styles.law}>
        <b>Record only.</b> Not for flying, navigation or fuel planning. The operator’s approval and
        the test safety plan overrule this app. Card and pencil stay on board.
      </p>
    </main>
  );
}
