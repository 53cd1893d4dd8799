import { change, figure } from '../kit/number.ts';
import { ago, hms, useSecond } from '../kit/time.ts';
import { boxCount, isFull, valueOf } from './boxes.ts';
import { useFly } from './flyContext.ts';
import type { NumberJob } from './numberJob.ts';
import styles from './NumberEcho.module.css';

/** What is being entered: the boxes as the indicator shows them, the last reading beside, and what comes next. */
export function NumberEcho({ job }: { readonly job: NumberJob }) {
  const { ui, layout } = useFly();
  const { spec } = job;
  return (
    <div
      className={`${styles.echo} ${styles[layout.screenClass]}`}
      data-instrument={job.instrument?.id ?? ''}
    >
      <p className={styles.head}>
        <b>{spec.title}</b> <span className={styles.unit}>{spec.unit}</span>
        <span data-first-digit={ui.firstDigit?.wall ?? ''}>
          {ui.firstDigit === null ? '' : hms(ui.firstDigit.wall)}
        </span>
      </p>
      <div className={styles.row}>
        <BoxRow job={job} />
        <Beside job={job} />
      </div>
      {job.next === null ? null : <p className={styles.next}>{job.next}</p>}
    </div>
  );
}

function BoxRow({ job }: { readonly job: NumberJob }) {
  const { boxes } = useFly().ui;
  const { format, clock, unit } = job.spec;
  return (
    <p
      role="img"
      className={styles.boxes}
      aria-label={`${boxes.minus ? 'minus ' : ''}${boxes.digits === '' ? 'empty' : boxes.digits}`}
    >
      {format.signed ? <span className={styles.sign}>{boxes.minus ? '\u2212' : '+'}</span> : null}
      {Array.from({ length: boxCount(format) }, (_, index) => (
        <span key={index} className={boxClass(index, format.wholeDigits, clock === true)}>
          {index === format.wholeDigits ? <i className={styles.point}>.</i> : null}
          <b
            className={
              index === boxes.digits.length ? `${styles.box} ${styles.current}` : styles.box
            }
          >
            {boxes.digits[index] ?? ''}
          </b>
        </span>
      ))}
      <span className={styles.unitBeside}>{unit}</span>
    </p>
  );
}

/** Thousands are parted by a gap, as are the hours, minutes and seconds of a clock. */
function boxClass(index: number, wholeDigits: number, clock: boolean): string | undefined {
  const parted = clock
    ? index > 0 && index % 2 === 0
    : index > 0 && index < wholeDigits && (wholeDigits - index) % 3 === 0;
  return parted ? `${styles.cell} ${styles.parted}` : styles.cell;
}

function Beside({ job }: { readonly job: NumberJob }) {
  const { clock, ui } = useFly();
  const now = useSecond(clock);
  const { last, format } = job.spec;
  const value = valueOf(ui.boxes, format);
  if (last === null) {
    return <p className={styles.beside}>{job.instrument === null ? '' : 'No reading yet'}</p>;
  }
  const full = value !== null && (isFull(ui.boxes, format) || !format.exact);
  return (
    <p className={styles.beside}>
      <span>
        Last <b>{figure(last, format.decimals)}</b>
      </span>
      <span>{job.lastAt === null ? 'on the sheet' : ago(now - job.lastAt)}</span>
      <span>
        {full ? <b>{change(value - last, format.decimals)}</b> : ''}
        {full && last !== 0 ? ` ${change(((value - last) / Math.abs(last)) * 100, 1)}\u00a0%` : ''}
      </span>
    </p>
  );
}
