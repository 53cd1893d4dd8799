import { useLayoutEffect, useRef, type ComponentType } from 'react';
import { sectionOf, SHEET_SECTIONS, type SheetSection } from '../../../record/sheetCheck.ts';
import { AircraftPage } from '../aircraft/AircraftPage.tsx';
import { BaselinePage } from '../baseline/BaselinePage.tsx';
import { CardsPage } from '../cards/CardsPage.tsx';
import { ClocksPage } from './ClocksPage.tsx';
import { ConditionPage } from '../aircraft/ConditionPage.tsx';
import { FlightPage } from './FlightPage.tsx';
import { InstrumentsPage } from '../instruments/InstrumentsPage.tsx';
import { LimitsPage } from '../cards/LimitsPage.tsx';
import { PanelsPage } from '../wing/PanelsPage.tsx';
import { PeoplePage } from './PeoplePage.tsx';
import { ProbesPage } from '../wing/ProbesPage.tsx';
import { TilesPage } from '../tiles/TilesPage.tsx';
import { WeightsPage } from '../aircraft/WeightsPage.tsx';
import { DraftContext, type SheetDraft } from './sheetDraft.ts';
import styles from '../Brief.module.css';

const PAGES: Readonly<Record<SheetSection, { name: string; page: ComponentType }>> = {
  flight: { name: 'Flight', page: FlightPage },
  aircraft: { name: 'Aircraft', page: AircraftPage },
  weights: { name: 'Weights', page: WeightsPage },
  condition: { name: 'Condition', page: ConditionPage },
  baseline: { name: 'Baseline, target', page: BaselinePage },
  panels: { name: 'Panels', page: PanelsPage },
  probes: { name: 'Probes', page: ProbesPage },
  instruments: { name: 'Instruments', page: InstrumentsPage },
  cards: { name: 'Test cards', page: CardsPage },
  people: { name: 'People', page: PeoplePage },
  clocks: { name: 'Clocks', page: ClocksPage },
  limits: { name: 'Limits', page: LimitsPage },
  tiles: { name: 'Tiles of Fly', page: TilesPage },
};

/** The flight sheet, page by page, with the standing list of what is doubtful. Nothing here stops anybody. */
export function SheetEditor(props: {
  readonly draft: SheetDraft;
  readonly section: SheetSection;
  readonly onPlace: (section: SheetSection, item: number | null) => void;
}) {
  const { draft, section } = props;
  const wanted = useRef<string | null>(null);
  const page = useRef<HTMLElement>(null);
  // The field of a doubt may stand on another page: it takes the focus once that page is there.
  useLayoutEffect(() => {
    const act = wanted.current;
    if (act !== null) {
      wanted.current = null;
      const fields = [...(page.current?.querySelectorAll<HTMLElement>('[data-act]') ?? [])];
      const field = fields.find((element) => element.dataset['act']?.startsWith(act) === true);
      const target = field?.matches('label') === true ? field.querySelector('input') : field;
      target?.focus();
    }
  });
  const { name, page: Page } = PAGES[section];
  return (
    <DraftContext value={draft}>
      <div className={styles.editor}>
        <nav className={styles.sections} aria-label="Pages of the flight sheet">
          {SHEET_SECTIONS.map((one) => {
            const count = draft.doubts.filter((doubt) => sectionOf(doubt.path) === one).length;
            return (
              <button
                key={one}
                type="button"
                data-act={`section=${one}`}
                aria-current={one === section ? 'page' : undefined}
                onClick={() => props.onPlace(one, null)}
              >
                <span>{PAGES[one].name}</span>
                <span className={styles.count}>
                  {count === 0 ? '' : String(count)}
                  {count === 0 ? null : <span className={styles.reader}> doubtful</span>}
                </span>
              </button>
            );
          })}
        </nav>
        <section className={styles.page} ref={page} aria-label={name}>
          <h2>{name}</h2>
          <Page />
        </section>
        <aside className={styles.doubts} aria-label="Doubtful">
          <h2>
            Doubtful <span className={styles.count}>{draft.doubts.length}</span>
          </h2>
          {draft.doubts.length === 0 ? (
            <p>Nothing that this check knows of.</p>
          ) : (
            <ol className={styles.doubtList}>
              {draft.doubts.map((doubt, index) => (
                <li key={`${doubt.path}${doubt.words}`}>
                  <button
                    type="button"
                    data-act={`doubt=${index}`}
                    onClick={() => {
                      const to = sectionOf(doubt.path);
                      wanted.current = `sheet.${doubt.path}`;
                      props.onPlace(to, itemOf(to, doubt.path));
                    }}
                  >
                    {doubt.words}
                  </button>
                </li>
              ))}
            </ol>
          )}
        </aside>
      </div>
    </DraftContext>
  );
}

const WITH_ITEMS: readonly SheetSection[] = [
  'baseline',
  'panels',
  'probes',
  'instruments',
  'cards',
];

/** The row that a doubt is about, on pages that open one row at a time. */
function itemOf(section: SheetSection, path: string): number | null {
  const row = /^[a-zA-Z]+\.(\d+)/.exec(path)?.[1];
  return row === undefined || !WITH_ITEMS.includes(section) ? null : Number(row);
}
