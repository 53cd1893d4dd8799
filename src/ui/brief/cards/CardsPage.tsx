import { freeId } from '../../../record/blankSheet.ts';
import type { TestCard } from '../../../record/sheet.ts';
import { measureWords, unitsOf } from '../../../record/sheetMeasure.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { ItemKeys } from '../sheet/ItemKeys.tsx';
import { SheetChoice, SheetMeasure, SheetNumber, SheetText } from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import styles from '../Brief.module.css';

/** Test cards in the order flown: one point each, with its suction setting and what it still wants. */
export function CardsPage() {
  const draft = useDraft();
  const { sheet, item } = draft;
  const cards = sheet.testCards;
  const open = item === null ? undefined : cards[item];
  if (item !== null && open !== undefined) {
    return <CardItem key={item} index={item} card={open} />;
  }
  const inOrder = cards
    .map((card, index) => ({ card, index }))
    .toSorted((a, b) => a.card.order - b.card.order);
  return (
    <>
      <div className={styles.keys}>
        <GroundButton
          act="cards.add"
          strong={cards.length === 0}
          onPress={() => {
            draft.replace({ ...sheet, testCards: [...cards, nextCard(cards)] });
            draft.openItem(cards.length);
          }}
        >
          Add a card
        </GroundButton>
      </div>
      <ol className={styles.list}>
        {inOrder.map(({ card, index }) => (
          <li key={index}>
            <button
              type="button"
              className={styles.listKey}
              data-act={`cards.item=${index}`}
              onClick={() => draft.openItem(index)}
            >
              <b>{`${card.order}. ${card.id}`}</b>
              <span>{card.title}</span>
              <span>{card.suction === 'off' ? 'suction off' : card.setting}</span>
              <span>
                {`priority ${card.priority}, ${card.minimumReadings} readings`}
                {card.expectedFuel === undefined ? '' : `, ${measureWords(card.expectedFuel)}`}
              </span>
            </button>
          </li>
        ))}
      </ol>
    </>
  );
}

function nextCard(cards: readonly TestCard[]): TestCard {
  const order = Math.max(0, ...cards.map((card) => card.order)) + 1;
  const id = `TP${String(order).padStart(2, '0')}`;
  return {
    id: cards.some((card) => card.id === id) ? freeId('TP', cards) : id,
    title: '',
    setting: '',
    suction: 'on',
    order,
    priority: 1,
    minimumReadings: 3,
  };
}

function CardItem({ index, card }: { index: number; card: TestCard }) {
  const draft = useDraft();
  const at = `testCards.${index}` as const;
  return (
    <>
      <ItemKeys
        count={draft.sheet.testCards.length}
        title={`Card ${card.id}`}
        removeAct="cards.remove"
        onRemove={() => draft.put(at, undefined, { text: '', words: '' })}
      />
      <div className={styles.fields}>
        <SheetText path={`${at}.id`} label="Test point" />
        <SheetText path={`${at}.title`} label="Title" />
        <SheetChoice
          path={`${at}.suction`}
          label="Suction"
          choices={[
            { value: 'on', label: 'On' },
            { value: 'off', label: 'Off: a baseline' },
          ]}
        />
        <SheetText path={`${at}.setting`} label="Suction setting" />
        <SheetNumber path={`${at}.order`} label="Place in the order" />
        <SheetNumber path={`${at}.priority`} label="Priority, 1 first" />
        <SheetNumber path={`${at}.minimumReadings`} label="Fuel readings wanted, at least" />
        <SheetNumber path={`${at}.minimumSteadyS`} label="Steady for, at least" unit="s" optional />
        <SheetMeasure
          path={`${at}.expectedFuel`}
          label="Expected fuel"
          units={unitsOf('mass')}
          unit={draft.sheet.massUnit}
          optional
        />
        <SheetText path={`${at}.revision`} label="Revision of the card" optional />
      </div>
      <SheetText path={`${at}.objective`} label="Objective" optional long />
      <SheetText path={`${at}.limits`} label="Limits" optional long hint="As briefed, in words." />
      <SheetText path={`${at}.stopCriteria`} label="What ends the point" optional long />
    </>
  );
}
