import { useState } from 'react';
import type { PointResult } from '../../../analysis/results.ts';
import type { EntryId } from '../../../record/brand.ts';
import type { Desk } from '../context.ts';
import page from '../Debrief.module.css';
import { PointDetail } from './PointDetail.tsx';
import { PointsTable } from './PointsTable.tsx';

/** Every run with its number or the reason for none, and beside it what the chosen one was made of. */
export function PointsTab(props: {
  readonly desk: Desk;
  readonly points: readonly PointResult[];
  readonly onOpen: (entry: EntryId) => void;
}) {
  const { points } = props;
  const [chosenKey, setChosenKey] = useState<string | null>(null);
  const keyOf = ({ point, run }: PointResult): string => `${point} ${run}`;
  const chosen =
    points.find((point) => keyOf(point) === chosenKey) ??
    points.find(({ result }) => result.kind === 'valid') ??
    points[0] ??
    null;
  return (
    <div className={page.twoColumns}>
      <PointsTable
        points={points}
        sheet={props.desk.view.state.sheet}
        chosen={chosen}
        onChoose={(point) => setChosenKey(keyOf(point))}
      />
      {chosen === null ? null : (
        <div className={page.side}>
          <PointDetail desk={props.desk} point={chosen} onOpen={props.onOpen} />
        </div>
      )}
    </div>
  );
}
