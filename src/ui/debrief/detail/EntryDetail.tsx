import { useState } from 'react';
import type { EntryId } from '../../../record/brand.ts';
import type { StandingEntry } from '../../../record/flightState.ts';
import { entryWords } from '../../../record/lang.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { Ink } from '../../kit/Ink.tsx';
import type { Desk } from '../context.ts';
import { whyReadOnly } from '../context.ts';
import { doubtOf, marksBeside } from '../standing.ts';
import { clockWords, doubtWords } from '../timeWords.ts';
import { laneName, laneOf } from '../timeline/lanes.ts';
import { AmendForm } from './AmendForm.tsx';
import { PairBlock } from '../pairs/PairBlock.tsx';
import { pairsWith } from '../pairs/pairsOf.ts';
import { CauseOf } from './CauseOf.tsx';
import { Chain } from './Chain.tsx';
import { CloseLateForm, closingKindOf } from './CloseLateForm.tsx';
import styles from './EntryDetail.module.css';
import { Facts } from './Facts.tsx';
import { NoteForm } from './NoteForm.tsx';
import { Settle } from './Settle.tsx';
import { WithdrawForm } from './WithdrawForm.tsx';

type Open = 'amend' | 'withdraw' | 'note' | 'closeLate' | null;

/** The selected entry: as read, as it stands, what was done to it, and what may be done. */
export function EntryDetail(props: {
  readonly desk: Desk;
  readonly standing: StandingEntry;
  readonly onStep: (way: 'earlier' | 'later') => void;
}) {
  const { desk, standing } = props;
  const { sheet } = desk.view.state;
  const [open, setOpen] = useState<{ readonly form: Open; readonly of: EntryId } | null>(null);
  const { entry, effective } = standing;
  const form = open !== null && open.of === entry.id ? open.form : null;
  const show = (next: Open): void => setOpen(next === null ? null : { form: next, of: entry.id });
  const at = desk.base.shown(standing.at, entry.rec);
  const axis = desk.axis.time;
  const doubtS = doubtOf(standing, sheet);
  const beside = marksBeside(standing);
  const readOnly = whyReadOnly(desk.journal);
  const pairs = pairsWith(desk.view, entry.id);
  const close = (): void => show(null);

  return (
    <section className={styles.detail} aria-label="Selected entry">
      <div className={styles.titleRow}>
        <div className={styles.title}>
          <h2 id="entry-detail" tabIndex={-1}>
            {entryWords(effective, sheet)}
          </h2>
          <p>
            {laneName(laneOf(effective, sheet))}, entry {entry.seq} by {entry.author}
          </p>
        </div>
        <div className={styles.step} role="group" aria-label="Step through the entries">
          <GroundButton act="detail-earlier" onPress={() => props.onStep('earlier')}>
            Earlier
          </GroundButton>
          <GroundButton act="detail-later" onPress={() => props.onStep('later')}>
            Later
          </GroundButton>
        </div>
      </div>
      <div className={styles.when}>
        <p className={styles.clock}>
          {clockWords(at)}
          <small>Z</small>
          {axis.choice === 'utc' ? null : (
            <span className={styles.onAxis}>
              {axis.words(at)} <small>{axis.head}</small>
            </span>
          )}
        </p>
        <p className={styles.marks}>
          {doubtS === null ? null : <span>{doubtWords(doubtS)}</span>}
          {beside.map((words) => (
            <b key={words}>{words}</b>
          ))}
        </p>
      </div>
      {effective.kind === 'sketchDrawn' ? (
        <div className={styles.sketch}>
          <Ink strokes={effective.body.strokes} label={entryWords(effective, sheet)} />
        </div>
      ) : null}
      {readOnly === null ? null : <p className={styles.quiet}>{readOnly}</p>}
      {readOnly === null && form === null ? (
        <>
          <Settle desk={desk} standing={standing} />
          <div className={styles.actions}>
            {entry.kind === 'unrecognised' || standing.standing === 'withdrawn' ? null : (
              <GroundButton act="detail-amend" strong onPress={() => show('amend')}>
                Amend
              </GroundButton>
            )}
            {standing.standing === 'withdrawn' ? null : (
              <GroundButton act="detail-withdraw" onPress={() => show('withdraw')}>
                Withdraw
              </GroundButton>
            )}
            <GroundButton act="detail-note" onPress={() => show('note')}>
              Add note
            </GroundButton>
            {closingKindOf(desk.view, standing) === null ? null : (
              <GroundButton act="detail-close-late" onPress={() => show('closeLate')}>
                Close late
              </GroundButton>
            )}
          </div>
        </>
      ) : null}
      {form === 'amend' ? (
        <AmendForm key={entry.id} desk={desk} standing={standing} onDone={close} />
      ) : null}
      {form === 'withdraw' ? (
        <WithdrawForm key={entry.id} desk={desk} standing={standing} onDone={close} />
      ) : null}
      {form === 'note' ? (
        <NoteForm key={entry.id} desk={desk} target={standing} onDone={close} />
      ) : null}
      {form === 'closeLate' ? (
        <CloseLateForm key={entry.id} desk={desk} standing={standing} onDone={close} />
      ) : null}
      <CauseOf key={`cause ${entry.id}`} desk={desk} standing={standing} />
      {pairs.length === 0 ? null : (
        <section aria-label="Seen by two recorders">
          <h3 className={styles.sub}>Seen by two recorders</h3>
          {pairs.map((pair) => (
            <PairBlock
              key={`${pair.first.entry.id} ${pair.second.entry.id}`}
              desk={desk}
              pair={pair}
              onOpen={desk.select}
            />
          ))}
        </section>
      )}
      <Facts desk={desk} standing={standing} />
      <Chain desk={desk} standing={standing} />
    </section>
  );
}
