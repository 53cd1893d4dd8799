import type { Entry } from '../../../record/entry.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
import { entryWords } from '../../../record/lang.ts';
import { measureWords } from '../../../record/readingWords.ts';
import { entriesAbout } from '../entriesAbout.ts';
import { doubtOf, isStruck, marksBeside } from '../standing.ts';
import { clockWords, doubtWords, ordinalDate } from '../timeWords.ts';
import { entryLabel } from './entryLabel.ts';
import type { Printed } from './printed.ts';
import styles from './Print.module.css';
import { SheetHead } from './SheetHead.tsx';

/** Every entry in order of event time, what was amended or withdrawn struck and still readable; addenda stand apart. */
export function LogPages({ printed }: { readonly printed: Printed }) {
  const { version, desk, openItems } = printed;
  const addenda = new Set(version?.addenda.map(({ entry }) => entry.id));
  const signed = desk.view.standing.filter(({ entry }) => !addenda.has(entry.id));
  const open = version?.openItems ?? openItems.map(({ words }) => words);
  return (
    <>
      <SheetHead printed={printed} what="Full log" />
      <p className={styles.key}>
        {version === null
          ? `Draft: ${signed.length} entries.`
          : `Version signed: ${version.entryCount} entries, ${version.addenda.length} addenda.`}{' '}
        Times in UTC on the aircraft time base; ± is one standard uncertainty of a time. Struck: as
        first written.
      </p>
      {open.length === 0 ? null : (
        <>
          <h2>{version === null ? 'Open now' : 'Signed as open'}</h2>
          <ul className={styles.open}>
            {open.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </>
      )}
      <h2>Log</h2>
      <Rows printed={printed} rows={signed} />
      {version === null || version.addenda.length === 0 ? null : (
        <>
          <h2>Addenda, written after the signature</h2>
          <Rows printed={printed} rows={version.addenda} />
        </>
      )}
    </>
  );
}

function Rows({
  printed,
  rows,
}: {
  readonly printed: Printed;
  readonly rows: readonly StandingEntry[];
}) {
  const days = new Set<string>();
  return (
    <table className={styles.log}>
      <thead>
        <tr>
          <th>Time, Z</th>
          <th>Entry</th>
          <th>What was written</th>
          <th>By</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => {
          const at = printed.desk.base.shown(row.at, row.entry.rec);
          const day = ordinalDate(at);
          const isNew = !days.has(day);
          days.add(day);
          return <Row key={row.entry.id} printed={printed} row={row} day={isNew ? day : null} />;
        })}
      </tbody>
    </table>
  );
}

function Row(props: {
  readonly printed: Printed;
  readonly row: StandingEntry;
  readonly day: string | null;
}) {
  const { printed, row } = props;
  const { view, base } = printed.desk;
  const { sheet } = view.state;
  const { entry } = row;
  const asWritten = entryWords(entry, sheet);
  const asAmended = entryWords(row.effective, sheet);
  const isChanged = row.amendedBy.length > 0 && asAmended !== asWritten;
  const doubt =
    entry.kind === 'unrecognised' || entry.body.at === undefined ? null : doubtOf(row, sheet);
  const marks = marksBeside(row);
  return (
    <tr>
      <td>
        {props.day === null ? null : <b className={styles.day}>{props.day}</b>}
        {clockWords(base.shown(row.at, entry.rec))}
        {doubt === null ? null : <small> {doubtWords(doubt)}</small>}
      </td>
      <td>{entryLabel(view, entry.id)}</td>
      <td>
        <p>
          {isStruck(row) || isChanged ? <del>{asWritten}</del> : asWritten}
          {marks.length === 0 ? null : <b> {marks.join(', ')}</b>}
        </p>
        {isChanged ? <p>{asAmended}</p> : null}
        <Readings entry={entry} />
        {entriesAbout(view, entry.id).map((about) => (
          <p key={about.entry.id} className={styles.about}>
            {entryLabel(view, about.entry.id)} {entryWords(about.effective, sheet)},{' '}
            {about.entry.author}
          </p>
        ))}
      </td>
      <td>{entry.author}</td>
    </tr>
  );
}

/** Every reading of the look as it was written; the line above it gives only what the look was about. */
function Readings({ entry }: { readonly entry: Entry }) {
  if (entry.kind === 'unrecognised' || entry.body.readings === undefined) return null;
  const words = entry.body.readings.map((reading) => {
    if ('blank' in reading) return `${reading.instrument} ${BLANKS[reading.blank]}`;
    const queried = reading.queried === undefined ? '' : ' (queried)';
    return `${reading.instrument} ${measureWords(reading)}${queried}`;
  });
  return <p className={styles.about}>As read: {words.join(', ')}</p>;
}

const BLANKS = {
  notRead: 'not read',
  notApplicable: 'not applicable',
  unserviceable: 'unserviceable',
} as const;
