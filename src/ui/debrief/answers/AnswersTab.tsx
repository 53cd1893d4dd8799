import { useMemo } from 'react';
import { acrossFlights } from '../../../analysis/acrossFlights.ts';
import { flightResults } from '../../../analysis/flightResults.ts';
import type { EntryId } from '../../../record/brand.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import type { FlightView } from '../../../record/flight.ts';
import type { Desk } from '../context.ts';
import type { TimelineModel } from '../timeline/model.ts';
import styles from './Answers.module.css';
import { unitsOf, type AnswerDesk } from './answerDesk.ts';
import { AnswerIndex } from './AnswerIndex.tsx';
import { earlierThan } from './otherFlights.ts';
import { QuestionPage } from './QuestionPage.tsx';
import { QUESTIONS, type QuestionId } from './questions.ts';

/** The ten questions of a debrief: all at a glance, then one at a time, down to the entries. */
export function AnswersTab(props: {
  readonly desk: Desk;
  readonly model: TimelineModel;
  readonly others: readonly FlightView[];
  readonly question: QuestionId | null;
  readonly onQuestion: (question: QuestionId | null) => void;
  readonly onOpen: (entry: EntryId) => void;
}) {
  const { desk, model, others, question, onQuestion, onOpen } = props;
  const { view } = desk;
  const of = useMemo((): AnswerDesk => {
    const beside = [...others, view];
    return {
      desk,
      model,
      results: flightResults(view, earlierThan(view, others)),
      across: acrossFlights(beside),
      flightCount: beside.length,
      units: unitsOf(view),
      onOpen,
    };
    // The rest of the desk is the same for the same view; a new pen or a new word said changes no number.
    // oxlint-disable-next-line react/exhaustive-deps
  }, [view, model, others]);
  if (question === null) {
    return <AnswerIndex of={of} onQuestion={onQuestion} />;
  }
  return (
    <>
      <nav className={styles.strip} aria-label="The ten answers">
        <GroundButton act="answers-all" onPress={() => onQuestion(null)}>
          All
        </GroundButton>
        {QUESTIONS.map(({ id, name }) => (
          <GroundButton
            key={id}
            act={`answer-${id}`}
            pressed={id === question}
            label={`${id} ${name}`}
            onPress={() => onQuestion(id)}
          >
            {id}
          </GroundButton>
        ))}
      </nav>
      <QuestionPage key={question} of={{ ...of, desk, onOpen }} question={question} />
    </>
  );
}
