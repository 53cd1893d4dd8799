import type { Reminder } from '../../analysis/reminderWants.ts';
import type { Stamp } from '../../record/entry.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import type { FlightState } from '../../record/flightState.ts';
import { Caution } from '../kit/Caution.tsx';
import { running, useSecond } from '../kit/time.ts';
import { TouchKey } from '../kit/TouchSurface.tsx';
import type { Touch } from '../kit/touchBoard.ts';
import type { Act } from './act.ts';
import { actOf } from './acts.ts';
import { useFly, type Fly } from './flyContext.ts';
import { remindWords, troubleWords } from './remindWords.ts';
import { isAskedAtPad, QueryKeys, QueryWords, useQuery } from './QueryStrip.tsx';
import { actNow, tileOf } from './tiles.ts';
import { writeAct } from './touchTile.ts';
import { useCautionLog, useReminder } from './useReminder.ts';
import { useRisk } from './useRisk.ts';
import styles from './Remind.module.css';

/** How long a line about an ignored touch stays. */
const NOTICE_MS = 4000;

/**
 * The one reserved strip, never over a key. A record that is not being saved has it to itself; a risk that stands for
 * long, named beside the saved count all the while, gives way to a reminder for as long as that is up.
 */
export function Remind() {
  const fly = useFly();
  const { clock, status, ui, layout } = fly;
  const now = useSecond(clock);
  const trouble = troubleWords(status);
  const risk = useRisk();
  const asked = useQuery();
  const query = isAskedAtPad(ui.pad) ? null : asked;
  const due = useReminder(trouble === null && query === null);
  useCautionLog(risk);
  const className =
    layout.screenClass === 'eightWide' ? `${styles.strip} ${styles.stacked}` : styles.strip;
  const plate = trouble ?? (due === null && query === null ? (risk?.words ?? null) : null);
  if (plate !== null) {
    return (
      <div className={styles.risk}>
        <Caution words={plate} />
      </div>
    );
  }
  if (query !== null) {
    return (
      <div className={className}>
        <QueryWords query={query} />
        <div className={styles.query}>
          <QueryKeys query={query} />
        </div>
      </div>
    );
  }
  const notice = ui.notice !== null && now - ui.notice.at < NOTICE_MS ? ui.notice.words : null;
  if (due !== null) {
    const { what, detail } = remindWords(due, running(now - due.since));
    return (
      <div className={className} data-reminder={due.kind}>
        <p role="status">
          <b>{what}</b>
          <span>{notice ?? detail}</span>
        </p>
        {due.answers.map((answer) => (
          <TouchKey
            key={answer}
            act={`remind-${answer}`}
            className={styles.answer}
            onTouch={(touch) => void answered(fly, due, answer, touch)}
          >
            {ANSWER_WORDS[answer]}
          </TouchKey>
        ))}
      </div>
    );
  }
  return (
    <div className={className}>
      <p role="status">{notice ?? statusWords(fly)}</p>
    </div>
  );
}

const ANSWER_WORDS = {
  record: 'Record',
  notThisFlight: 'Not this flight',
  close: 'Close',
  stillOpen: 'Still open',
} as const satisfies Record<Reminder['answers'][number], string>;

const CLOSES: Readonly<Record<string, string>> = {
  moisture: 'cloud-out',
  sampler: 'sampler-close',
  turn: 'turn-end',
  turbulence: 'rough-out',
  testPoint: 'point-end',
};

async function answered(
  fly: Fly,
  due: Reminder,
  answer: Reminder['answers'][number],
  touch: Touch,
): Promise<void> {
  await log(fly, due.id, answer, touch.stamp);
  const act =
    answer === 'record'
      ? coversAct(fly.state, fly.sheet)
      : answer === 'close'
        ? closingAct(fly, due.subject, touch)
        : null;
  if (act !== null) {
    await writeAct(fly, act, touch);
  }
}

function closingAct(fly: Fly, subject: string, { stamp }: Touch): Act | null {
  const known = CLOSES[subject];
  if (known !== undefined) {
    return actOf(known);
  }
  // `own:<tile>`: the crew's own interval closes by its own tile.
  const tile = tileOf(subject.slice('own:'.length), fly.sheet);
  return tile === null ? null : actNow(tile, fly.sceneAt(stamp.wall));
}

/** The question is about both wings; once one of them is clear it is about the other. */
function coversAct({ covers }: FlightState, sheet: FlightSheet | null): Act | null {
  const waits = (wing: 'L' | 'R'): boolean =>
    (sheet?.panels ?? []).some(
      ({ id, wing: of }) => of === wing && covers[id] !== 'clear' && covers[id] !== 'hung',
    );
  const [left, right] = [waits('L'), waits('R')];
  if (left !== right) {
    return actOf(left ? 'covers-left' : 'covers-right');
  }
  return {
    id: 'covers-both',
    label: 'Covers',
    verb: 'Release',
    write: (_scene, mark) => ({ kind: 'coversReleased', body: { ...mark, wing: 'both' } }),
  };
}

async function log(fly: Fly, reminder: string, answer: string, stamp: Stamp): Promise<void> {
  await fly.append({ kind: 'reminderAnswered', body: { reminder, answer }, stamp });
}

/** With nothing to say the strip names the card in hand, so that its place is never only empty. */
function statusWords(fly: Fly): string {
  const { point } = { point: fly.sceneAt(fly.clock.now()).nextPoint };
  const card = fly.sheet?.testCards.find((each) => each.id === point);
  return card === undefined
    ? ''
    : `${fly.state.openRun === null ? 'Next' : 'Now'}: ${card.id} ${card.title}`;
}
