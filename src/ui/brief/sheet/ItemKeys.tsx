import { GroundButton } from '../../kit/Ground.tsx';
import { useDraft } from './sheetDraft.ts';
import styles from '../Brief.module.css';

/** Above a row that is open: back to the list, its neighbours, and taking it away (which can be taken back). */
export function ItemKeys(props: {
  readonly count: number;
  readonly title: string;
  readonly removeAct: string;
  readonly onRemove: () => void;
}) {
  const draft = useDraft();
  const at = draft.item ?? 0;
  return (
    <div className={styles.itemKeys}>
      <GroundButton act="item.back" onPress={() => draft.openItem(null)}>
        List
      </GroundButton>
      <h3>
        {props.title} <span className={styles.quiet}>{`${at + 1} of ${props.count}`}</span>
      </h3>
      <GroundButton
        act="item.prev"
        disabled={at === 0}
        onPress={() => draft.openItem(Math.max(0, at - 1))}
      >
        Previous
      </GroundButton>
      <GroundButton
        act="item.next"
        disabled={at >= props.count - 1}
        onPress={() => draft.openItem(Math.min(props.count - 1, at + 1))}
      >
        Next
      </GroundButton>
      <GroundButton
        act={props.removeAct}
        onPress={() => {
          props.onRemove();
          draft.openItem(null);
        }}
      >
        Remove
      </GroundButton>
    </div>
  );
}
