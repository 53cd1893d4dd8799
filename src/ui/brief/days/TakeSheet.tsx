import { useState } from 'react';
import {
  readSheetFile,
  sheetFindingWords,
  sheetRefusalWords,
  type SheetReading,
} from '../../../file/sheetFile.ts';
import type { Shelf } from '../../../journal/journal.ts';
import type { FlightSheet } from '../../../record/sheet.ts';
import { sheetChanges } from '../../../record/sheetDiff.ts';
import { withBasis } from '../../../record/sheetRevision.ts';
import { FilePick } from '../../kit/FilePick.tsx';
import { GroundButton } from '../../kit/Ground.tsx';
import { ChangeList } from '../sheet/ChangeList.tsx';
import styles from '../Brief.module.css';

interface Opened {
  readonly name: string;
  readonly reading: SheetReading;
  /** The sheet of that id on this tablet. */
  readonly here: FlightSheet | null;
}

/** Takes a flight sheet out of a file. One that is here under the same id is replaced only when somebody says so. */
export function TakeSheet(props: {
  readonly shelf: Shelf;
  readonly newId: () => string;
  readonly onTaken: (sheet: FlightSheet) => void;
}) {
  const { shelf } = props;
  const [opened, setOpened] = useState<Opened | null>(null);
  const [trouble, setTrouble] = useState(false);
  const read = async (file: File): Promise<void> => {
    const reading = readSheetFile(await file.text(), file.size);
    const sheets = reading.kind === 'read' ? await shelf.sheets() : [];
    const here =
      reading.kind === 'read'
        ? (sheets.find((sheet) => sheet.id === reading.sheet.id) ?? null)
        : null;
    setOpened({ name: file.name, reading, here });
  };
  const keep = async (taken: FlightSheet): Promise<void> => {
    // What changes from here on is told against what came in the file.
    const sheet = withBasis(taken, taken);
    try {
      await shelf.keepSheet(sheet);
      setOpened(null);
      props.onTaken(sheet);
    } catch {
      setTrouble(true);
    }
  };
  return (
    <section className={styles.block} aria-label="Flight sheet from a file">
      <h3>From a file</h3>
      <FilePick
        act="days.takeSheet"
        label="Open a flight sheet file"
        accept=".json,application/json"
        onFiles={([file]) => {
          if (file !== undefined) void read(file);
        }}
      />
      {opened === null ? null : (
        <Found
          opened={opened}
          onKeep={(sheet) => void keep(sheet)}
          onBeside={(sheet) => void keep({ ...sheet, id: props.newId() })}
        />
      )}
      {trouble ? (
        <p role="alert">
          <b>Not kept: this tablet refused the write. Try again.</b>
        </p>
      ) : null}
    </section>
  );
}

function Found(props: {
  readonly opened: Opened;
  readonly onKeep: (sheet: FlightSheet) => void;
  readonly onBeside: (sheet: FlightSheet) => void;
}) {
  const { name, reading, here } = props.opened;
  if (reading.kind === 'refused') {
    return (
      <p role="alert">
        <b>{`${name}: ${sheetRefusalWords(reading.because)}`}</b>
      </p>
    );
  }
  const { sheet, findings } = reading;
  const changes = here === null ? [] : sheetChanges(here, sheet);
  const alike = here !== null && changes.length === 0;
  return (
    <>
      <p>
        <b>{sheet.title.trim() === '' ? 'No title yet' : sheet.title}</b>
        {`, ${sheet.aircraft.mark === '' ? 'no mark' : sheet.aircraft.mark}, revision ${sheet.revision}, ${sheet.testCards.length} cards.`}
      </p>
      {findings.map((finding) => (
        <p key={finding}>{sheetFindingWords(finding)}</p>
      ))}
      {here === null ? null : (
        <div>
          <p>{alike ? 'It is here already, the same.' : 'It is here already, and differs:'}</p>
          <ChangeList changes={changes} />
        </div>
      )}
      <div className={styles.keys}>
        <GroundButton act="takeSheet.keep" strong onPress={() => props.onKeep(sheet)}>
          {here === null ? 'Keep on this tablet' : alike ? 'Go on with it' : 'Replace the one here'}
        </GroundButton>
        {here === null || alike ? null : (
          <GroundButton act="takeSheet.beside" onPress={() => props.onBeside(sheet)}>
            Keep beside it
          </GroundButton>
        )}
      </div>
    </>
  );
}
