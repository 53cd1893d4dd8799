import { lazy, Suspense, useCallback, useMemo, useRef, useState } from 'react';
import type { Clock, Journal, Shelf } from '../../journal/journal.ts';
import type { EntryId } from '../../record/brand.ts';
import { useFlight } from '../useFlight.ts';
import { AnswersTab } from './answers/AnswersTab.tsx';
import { useOtherFlights } from './answers/otherFlights.ts';
import type { QuestionId } from './answers/questions.ts';
import { AuditTab } from './audit/AuditTab.tsx';
import type { Desk } from './context.ts';
import styles from './Debrief.module.css';
import { DebriefHead } from './DebriefHead.tsx';
import { FilesTab } from './files/FilesTab.tsx';
import { FlightsTab } from './flights/FlightsTab.tsx';
import { FormsTab } from './forms/FormsTab.tsx';
import { PenChoice } from './PenChoice.tsx';
import { openRecorderPort, type RecorderPort } from './recorder/recorderPort.ts';
import { RecorderTab } from './recorder/RecorderTab.tsx';
import { useRecorder } from './recorder/useRecorder.ts';
import { openItemsOf } from './sign/openItems.ts';
import { SignTab } from './sign/SignTab.tsx';
import { type TabId, tabElementId, tabPanelId, Tabs } from './Tabs.tsx';
import { TimelineTab } from './TimelineTab.tsx';
import { useTimeWindow } from './timeline/useTimeWindow.ts';
import { useAxisTime } from './useAxisTime.ts';
import { useDebrief } from './useDebrief.ts';
import { useFocusKept } from './useFocusKept.ts';
import { useWriter } from './useWriter.ts';

/** Loaded when somebody prints: nobody waits for it in the air. */
const PrintView = lazy(async () => {
  const { PrintView: loaded } = await import('./print/PrintView.tsx');
  return { default: loaded };
});

interface DebriefProps {
  readonly journal: Journal;
  readonly shelf: Shelf;
  readonly clock: Clock;
  readonly build: string;
  /** Who reads a recorder's file; a test that has no worker hands in its own. */
  readonly openRecorder?: () => RecorderPort;
  readonly onBrief: () => void;
  readonly onFly: () => void;
}

/** Debrief: the flight on one time axis, put right in the open, decided, signed and handed over. */
export function Debrief(props: DebriefProps) {
  // What is selected and in view belongs to one flight; another one starts anew.
  return <DebriefOfFlight key={props.journal.flight} {...props} />;
}

function DebriefOfFlight(props: DebriefProps) {
  const { journal, clock } = props;
  const { view, status } = useFlight(journal);
  const writer = useWriter(journal, clock);
  const { base, points, model, rows, struckCount } = useDebrief(view);
  const axis = useAxisTime(view, base);
  const control = useTimeWindow(model);
  const recorder = useRecorder(view, props.openRecorder ?? openRecorderPort);
  const [tab, setTab] = useState<TabId>('timeline');
  const [question, setQuestion] = useState<QuestionId | null>(null);
  const [selected, setSelected] = useState<EntryId | null>(null);
  const [isPrinting, setPrinting] = useState(false);
  const page = useRef<HTMLDivElement>(null);
  const others = useOtherFlights(props.shelf, view, tab === 'answers' || tab === 'flights');
  const openItems = useMemo(() => openItemsOf(view, points), [view, points]);
  useFocusKept();

  const select = useCallback(
    (entry: EntryId | null): void => {
      setSelected(entry);
      const mark = model.marks.find((one) => one.entry === entry);
      if (mark !== undefined) {
        control.reveal(mark.at);
      }
    },
    [model, control],
  );
  const openOnTimeline = (entry: EntryId): void => {
    select(entry);
    setTab('timeline');
    setPrinting(false);
  };
  const desk: Desk = { view, base, axis, journal, clock, writer, selected, select };

  if (isPrinting) {
    return (
      <Suspense fallback={<p className={styles.page}>Laying out the sheets.</p>}>
        <PrintView
          desk={desk}
          openItems={openItems}
          build={props.build}
          onBack={() => setPrinting(false)}
          onOpen={openOnTimeline}
        />
      </Suspense>
    );
  }
  return (
    <div ref={page} className={styles.page}>
      <DebriefHead
        view={view}
        status={status}
        openItems={openItems.length}
        onBrief={props.onBrief}
        onFly={props.onFly}
      />
      <div className={styles.bar}>
        <Tabs chosen={tab} onChoose={setTab} />
        <PenChoice desk={desk} />
      </div>
      <main
        role="tabpanel"
        id={tabPanelId(tab)}
        aria-labelledby={tabElementId(tab)}
        tabIndex={tab === 'timeline' ? -1 : 0}
        className={tab === 'timeline' ? styles.main : `${styles.main} ${styles.scrolls}`}
      >
        {tab === 'timeline' ? (
          <TimelineTab
            desk={desk}
            model={model}
            control={control}
            recorder={recorder.state}
            rows={rows}
            points={points}
            struckCount={struckCount}
            openItems={openItems}
            onPoints={() => {
              setQuestion(1);
              setTab('answers');
            }}
            onLeave={() =>
              page.current?.querySelector<HTMLElement>('[role="tab"][tabindex="0"]')?.focus()
            }
          />
        ) : null}
        {tab === 'answers' ? (
          <AnswersTab
            desk={desk}
            model={model}
            others={others}
            question={question}
            onQuestion={setQuestion}
            onOpen={openOnTimeline}
          />
        ) : null}
        {tab === 'flights' ? <FlightsTab desk={desk} others={others} /> : null}
        {tab === 'recorder' ? (
          <RecorderTab desk={desk} recorder={recorder} points={points} window={control.window} />
        ) : null}
        {tab === 'audit' ? <AuditTab desk={desk} onOpen={openOnTimeline} /> : null}
        {tab === 'forms' ? <FormsTab desk={desk} onOpen={openOnTimeline} /> : null}
        {tab === 'files' ? <FilesTab desk={desk} shelf={props.shelf} build={props.build} /> : null}
        {tab === 'sign' ? (
          <SignTab
            desk={desk}
            openItems={openItems}
            onOpen={openOnTimeline}
            onPrint={() => setPrinting(true)}
          />
        ) : null}
      </main>
      <p className={styles.foot}>
        <span role="status">{writer.said}</span>
        <span>
          Record only. Provisional, with its doubt; decisions rest with the test team. The approval
          of the operator and the test safety plan overrule this page.
        </span>
      </p>
    </div>
  );
}
