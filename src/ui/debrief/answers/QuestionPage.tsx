import styles from './Answers.module.css';
import type { AnswerDesk } from './answerDesk.ts';
import { BooksPage } from './pages/BooksPage.tsx';
import { ChronicPage } from './pages/ChronicPage.tsx';
import { ClocksPage } from './pages/ClocksPage.tsx';
import { CompletionPage } from './pages/CompletionPage.tsx';
import { EconomicsPage } from './pages/EconomicsPage.tsx';
import { FuelPage } from './pages/FuelPage.tsx';
import { LaminarPage } from './pages/LaminarPage.tsx';
import { LossPage } from './pages/LossPage.tsx';
import { MoisturePage } from './pages/MoisturePage.tsx';
import { PointsPage } from './pages/PointsPage.tsx';
import { QUESTIONS, type QuestionId } from './questions.ts';

const PAGES = {
  1: PointsPage,
  2: LossPage,
  3: MoisturePage,
  4: LaminarPage,
  5: FuelPage,
  6: CompletionPage,
  7: ChronicPage,
  8: EconomicsPage,
  9: ClocksPage,
  10: BooksPage,
} as const satisfies Record<QuestionId, (props: { readonly of: AnswerDesk }) => React.ReactNode>;

/** The page of one question. */
export function QuestionPage({
  of,
  question,
}: {
  readonly of: AnswerDesk;
  readonly question: QuestionId;
}) {
  const asked = QUESTIONS.find(({ id }) => id === question);
  const Page = PAGES[question];
  return (
    <article aria-label={asked?.name}>
      <h2 className={styles.title} tabIndex={-1}>
        {question} {asked?.name}
      </h2>
      <p className={styles.asks}>{asked?.asks}</p>
      <Page of={of} />
    </article>
  );
}
