import { useState } from 'react';
import type { Clock, Journal, Shelf } from '../../../journal/journal.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { isCalendarDate } from '../../../record/sheetDoubt.ts';
import { withoutBasis } from '../../../record/sheetRevision.ts';
import { GroundButton, TextField } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import { isoDate } from '../../kit/time.ts';
import { useKeptTexts } from '../useKept.ts';
import { personChoices, roleChoices } from './whoWrites.ts';
import styles from '../Brief.module.css';

const NATURES = [
  { value: 'flight', label: 'A flight' },
  { value: 'practice', label: 'Practice' },
] as const;

/** The last step on the ground: who writes, what it is called, and whether it is real. */
export function OpenFlight(props: {
  readonly shelf: Shelf;
  readonly clock: Clock;
  readonly sheet: FlightSheet;
  readonly doubts: number;
  readonly device: string;
  readonly onBack: () => void;
  readonly onOpened: (journal: Journal) => void;
}) {
  const { sheet, clock } = props;
  const texts = useKeptTexts(`open-${sheet.id}`);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [opening, setOpening] = useState(false);
  const nature = texts.of('nature') === 'practice' ? 'practice' : 'flight';
  const title = texts.of('title', sheet.title);
  const date = texts.of('date', isoDate(clock.now()));
  const device = texts.of('device', props.device);
  const scribe = sheet.people.find((person) => person.role.toLowerCase().includes('scribe'));
  const person = sheet.people.find((one) => one.id === texts.of('person', scribe?.id ?? ''));
  const author = texts.of('author', person?.id ?? '');
  const role = texts.of('role', person?.role ?? '');
  const dateFault = isCalendarDate(date)
    ? null
    : `Date: \u201c${date}\u201d is not a date, YYYY-MM-DD.`;
  const authorFault = author.trim() === '' ? 'Say who writes: initials are enough.' : null;
  const open = async () => {
    setOpening(true);
    try {
      const journal = await props.shelf.openFlight({
        nature,
        title: title.trim() === '' ? 'Untitled flight' : title,
        date,
        device,
        sheet: withoutBasis(sheet),
        author: { author, role },
        stamp: clock.stampNow(),
      });
      texts.clear();
      props.onOpened(journal);
    } catch {
      setOpening(false);
      setTrouble('Not opened: this tablet refused the write. Try again.');
    }
  };
  const text = (name: string, label: string, value: string, fault: string | null = null) => (
    <TextField
      act={`open.${name}`}
      label={label}
      value={value}
      onChange={(typed) => texts.put(name, typed)}
      fault={fault}
    />
  );
  return (
    <section className={styles.opening} aria-label="Open the flight">
      <h2>Open the flight</h2>
      <ChipField
        act="open.nature"
        label="This is"
        value={nature}
        choices={NATURES}
        onChange={(value) => texts.put('nature', value)}
        hint="Practice is marked in every entry’s flight, on every screen and in the file’s name."
      />
      {nature === 'practice' ? (
        <p className={styles.practice}>PRACTICE: never a flight record.</p>
      ) : null}
      <div className={styles.fields}>
        {text('title', 'Title', title)}
        {text('date', 'UTC date, YYYY-MM-DD', date, dateFault)}
        {text('device', 'This tablet is called', device)}
      </div>
      <ChipField
        act="open.person"
        label="I am"
        value={person?.id ?? null}
        choices={personChoices(sheet.people)}
        onChange={(id) => {
          const chosen = sheet.people.find((one) => one.id === id);
          texts.put('person', id);
          texts.put('author', id);
          texts.put('role', chosen?.role ?? '');
        }}
      />
      <ChipField
        act="open.role"
        label="My role: it chooses the tiles"
        value={role}
        choices={roleChoices(role)}
        onChange={(value) => texts.put('role', value)}
      />
      <div className={styles.fields}>{text('author', 'Initials', author, authorFault)}</div>
      <p>
        {props.doubts === 0
          ? 'Nothing on the flight sheet is doubtful.'
          : `${props.doubts} doubtful on the flight sheet. They stay listed and stop nobody.`}
      </p>
      {trouble === null ? null : (
        <p role="alert">
          <b>{trouble}</b>
        </p>
      )}
      <div className={styles.keys}>
        <GroundButton act="open.back" onPress={props.onBack}>
          Back to the flight sheet
        </GroundButton>
        <GroundButton
          act="open.go"
          strong
          disabled={opening || dateFault !== null || authorFault !== null}
          onPress={() => void open()}
        >
          {nature === 'practice' ? 'Open as practice' : 'Open the flight'}
        </GroundButton>
      </div>
    </section>
  );
}
