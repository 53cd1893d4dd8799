import { useEffect, useMemo, useRef, useState } from 'react';
import type { EntryId } from '../../../record/brand.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import type { Desk } from '../context.ts';
import type { OpenItem } from '../sign/openItems.ts';
import { AccountPages } from './AccountPages.tsx';
import { CustodyList } from './CustodyList.tsx';
import { LogPages } from './LogPages.tsx';
import styles from './Print.module.css';
import { cssString, pageFoot, pageHead, printedOf, type Printed } from './printed.ts';
import { SquawkList } from './SquawkList.tsx';
import { SummarySheet } from './SummarySheet.tsx';
import { WingMaps } from './WingMaps.tsx';

const SHEETS = [
  { id: 'summary', words: 'Summary' },
  { id: 'log', words: 'Full log' },
  { id: 'squawks', words: 'Squawks' },
  { id: 'samples', words: 'Samples' },
  { id: 'wings', words: 'Wing maps' },
  { id: 'account', words: 'In words' },
] as const;
type SheetId = (typeof SHEETS)[number]['id'];

const PAPERS = [
  { id: 'a4', words: 'A4' },
  { id: 'letter', words: 'Letter' },
] as const;
type Paper = (typeof PAPERS)[number]['id'];

/** What is handed over on paper, as it will look; printing itself is the system's own dialogue. */
export function PrintView(props: {
  readonly desk: Desk;
  readonly openItems: readonly OpenItem[];
  readonly build: string;
  readonly onBack: () => void;
  readonly onOpen: (entry: EntryId) => void;
}) {
  const { desk, openItems, build } = props;
  const [sheets, setSheets] = useState<readonly SheetId[]>(['summary']);
  const [paper, setPaper] = useState<Paper>('a4');
  const printed = useMemo(
    () => printedOf(desk, { openItems, build, printedAt: desk.clock.now() }),
    [desk, openItems, build],
  );
  usePageStrings(printed);
  const bar = useRef<HTMLElement>(null);
  useEffect(() => bar.current?.focus(), []);
  const all = SHEETS.map(({ id }) => id);
  const toggled = (id: SheetId): readonly SheetId[] =>
    all.filter((one) => (one === id ? !sheets.includes(id) : sheets.includes(one)));
  return (
    <div className={styles.view}>
      <header ref={bar} tabIndex={-1} className={styles.bar}>
        <div role="group" aria-label="What to print">
          {SHEETS.map(({ id, words }) => (
            <GroundButton
              key={id}
              act={`sheet-${id}`}
              pressed={sheets.includes(id)}
              onPress={() => setSheets(toggled(id))}
            >
              {words}
            </GroundButton>
          ))}
        </div>
        <div role="group" aria-label="Paper">
          {PAPERS.map(({ id, words }) => (
            <GroundButton
              key={id}
              act={`paper-${id}`}
              pressed={paper === id}
              onPress={() => setPaper(id)}
            >
              {words}
            </GroundButton>
          ))}
        </div>
        <div>
          <GroundButton
            act="print"
            strong
            disabled={sheets.length === 0}
            onPress={() => globalThis.print()}
          >
            Print
          </GroundButton>
          <GroundButton act="print-back" onPress={props.onBack}>
            Back
          </GroundButton>
        </div>
      </header>
      <main
        aria-label="As it will be printed"
        // It scrolls, and holds nothing else that takes the focus.
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
        tabIndex={0}
        className={`${styles.desk} ${paper === 'a4' ? styles.a4 : styles.letter}`}
      >
        {sheets.length === 0 ? <p>Choose what to print.</p> : null}
        {sheets.map((id) => (
          <section key={id} className={styles.sheet} data-act={`printed-${id}`}>
            <Sheet id={id} printed={printed} onOpen={props.onOpen} />
          </section>
        ))}
      </main>
    </div>
  );
}

function Sheet(props: {
  readonly id: SheetId;
  readonly printed: Printed;
  readonly onOpen: (entry: EntryId) => void;
}) {
  const { id, printed } = props;
  switch (id) {
    case 'summary':
      return <SummarySheet printed={printed} />;
    case 'log':
      return <LogPages printed={printed} />;
    case 'squawks':
      return <SquawkList printed={printed} />;
    case 'samples':
      return <CustodyList printed={printed} />;
    case 'wings':
      return <WingMaps printed={printed} />;
    case 'account':
      return <AccountPages printed={printed} onOpen={props.onOpen} />;
  }
}

/** The margins of a page take their words from the root alone. */
function usePageStrings(printed: Printed): void {
  useEffect(() => {
    const { style } = document.documentElement;
    style.setProperty('--print-head', cssString(pageHead(printed)));
    style.setProperty('--print-foot', cssString(pageFoot(printed)));
    return () => {
      style.removeProperty('--print-head');
      style.removeProperty('--print-foot');
    };
  }, [printed]);
}
