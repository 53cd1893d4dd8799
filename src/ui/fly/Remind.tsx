import { remindersDue, type Reminder } from '../../analysis/reminders.ts';
import type { Stamp } from '../../record/entry.ts';
import { Caution } from '../kit/Caution.tsx';
import { running, useSecond } from '../kit/time.ts';
import { TouchKey } from '../kit/TouchSurface.tsx';
import type { Touch } from '../kit/touchBoard.ts';
import { actOf } from './acts.ts';
import { useFly, type Fly } from './flyContext.ts';
import { remindWords, troubleWords } from './remindWords.ts';
import { writeAct } from './touchTile.ts';
import styles from './Remind.module.css';

/** How long a line about an ignored touch stays. */
const NOTICE_MS = 4000;

/** The one reserved strip: data at risk first, then one reminder, then what was just ignored. Never over a key. */
export function Remind() {
  const fly = useFly();
  const { clock, view, status, ui, layout } = fly;
  const now = useSecond(clock);
  const trouble = troubleWords(status);
  const className =
    layout.screenClass === 'eightWide' ? `${styles.strip} ${styles.stacked}` : styles.strip;
  if (trouble !== null) {
    return (
      <div className={styles.risk}>
        <Caution words={trouble} />
      </div>
    );
  }
  const [due] = remindersDue(view, now);
  if (due !== undefined) {
    const { what, detail } = remindWords(due, running(now - due.since));
    return (
      <div className={className}>
        <p role="status">
          <b>{what}</b>
          <span>{detail}</span>
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
  const notice = ui.notice !== null && now - ui.notice.at < NOTICE_MS ? ui.notice.words : null;
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
  const act = actOf(
    answer === 'record' ? 'covers-left' : answer === 'close' ? (CLOSES[due.subject] ?? '') : '',
  );
  await log(fly, due.id, answer, touch.stamp);
  if (act !== null) {
    await writeAct(fly, act, touch);
  }
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
