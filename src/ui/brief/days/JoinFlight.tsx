import { useState } from 'react';
import type { Clock, Journal, Shelf } from '../../../journal/journal.ts';
import { flightId } from '../../../record/brand.ts';
import type { FlightState } from '../../../record/flightState.ts';
import { GroundButton, TextField } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import { useFlightState } from '../useFlightState.ts';
import { useKeptTexts } from '../useKept.ts';
import { personChoices, roleChoices } from './whoWrites.ts';
import styles from '../Brief.module.css';

/**
 * A second tablet in a flight that came in a file: who writes on it, and in which role. Its log merges with the others'
 * later; until then it knows of them what the file knew.
 */
export function JoinFlight(props: {
  readonly shelf: Shelf;
  readonly clock: Clock;
  readonly flight: string;
  readonly device: string;
  readonly onBack: () => void;
  readonly onJoined: (journal: Journal) => void;
}) {
  const state = useFlightState(props.shelf, props.flight);
  if (state === null) {
    return <p>Reading.</p>;
  }
  return state === 'absent' ? (
    <p>That flight could not be read. The day list has the others.</p>
  ) : (
    <JoinForm {...props} state={state} />
  );
}

function JoinForm(props: Parameters<typeof JoinFlight>[0] & { readonly state: FlightState }) {
  const { state, clock } = props;
  const texts = useKeptTexts(`join-${props.flight}`);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [joining, setJoining] = useState(false);
  const people = state.sheet?.people ?? [];
  const person = people.find((one) => one.id === texts.of('person'));
  const author = texts.of('author', person?.id ?? '');
  const role = texts.of('role', person?.role ?? '');
  const device = texts.of('device', props.device);
  const ready = author.trim() !== '' && role.trim() !== '';
  const join = async () => {
    setJoining(true);
    try {
      const journal = await props.shelf.joinFlight({
        flight: flightId(props.flight),
        device,
        author: { author, role },
        stamp: clock.stampNow(),
      });
      texts.clear();
      props.onJoined(journal);
    } catch {
      setJoining(false);
      setTrouble('Not joined: this tablet refused the write. Try again.');
    }
  };
  return (
    <section className={styles.opening} aria-label="Join the flight">
      <h2>Join: {state.title}</h2>
      <p>
        {state.scribe === null ? null : `Opened by ${state.scribe.author}, ${state.scribe.role}. `}
        This tablet keeps a log of its own. Hand its file over after landing: the logs merge.
      </p>
      {people.length === 0 ? null : (
        <ChipField
          act="join.person"
          label="I am"
          value={person?.id ?? null}
          choices={personChoices(people)}
          onChange={(id) => {
            texts.put('person', id);
            texts.put('author', id);
            texts.put('role', people.find((one) => one.id === id)?.role ?? '');
          }}
        />
      )}
      <ChipField
        act="join.role"
        label="My role: it chooses the tiles"
        value={role}
        choices={roleChoices(role)}
        onChange={(value) => texts.put('role', value)}
      />
      <div className={styles.fields}>
        <TextField
          act="join.author"
          label="Initials"
          value={author}
          onChange={(text) => texts.put('author', text)}
        />
        <TextField
          act="join.device"
          label="This tablet is called"
          value={device}
          onChange={(text) => texts.put('device', text)}
        />
      </div>
      {trouble === null ? null : (
        <p role="alert">
          <b>{trouble}</b>
        </p>
      )}
      <div className={styles.keys}>
        <GroundButton act="join.back" onPress={props.onBack}>
          Day list
        </GroundButton>
        <GroundButton act="join.go" strong disabled={joining || !ready} onPress={() => void join()}>
          Join the flight
        </GroundButton>
      </div>
    </section>
  );
}
