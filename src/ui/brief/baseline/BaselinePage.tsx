import type { FlightSheet } from '../../../record/sheet.ts';
import { TickField } from '../../kit/Ground.tsx';
import { SheetNumber, SheetText } from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import { ArchiveBlock } from './ArchiveBlock.tsx';
import { ArchiveItem } from './ArchiveItem.tsx';
import styles from '../Brief.module.css';

/** What is hoped for, and what earlier flights taught about the suction-off flow. */
export function BaselinePage() {
  const draft = useDraft();
  const { sheet, item } = draft;
  const open = item === null ? undefined : sheet.baselineArchive?.[item];
  if (item !== null && open !== undefined) {
    return <ArchiveItem key={item} index={item} point={open} />;
  }
  return (
    <>
      <div className={styles.fields}>
        <SheetNumber
          path="targetReductionFraction"
          label="Target fuel-flow reduction"
          unit="%"
          scale={100}
          optional
        />
      </div>
      <section className={styles.block}>
        <TickField
          act="sheet.borrowedBaseline"
          label="Borrow the weight elasticity of earlier flights"
          value={sheet.borrowedBaseline !== undefined}
          onChange={(given) => draft.replace(given ? borrowing(sheet) : notBorrowing(sheet))}
        />
        <p className={styles.quiet}>
          It moves one baseline run to another weight until this flight has a second run. Whatever
          rests on it is labelled borrowed for ever after.
        </p>
        {sheet.borrowedBaseline === undefined ? null : (
          <div className={styles.fields}>
            <SheetNumber
              path="borrowedBaseline.weightElasticity"
              label="Share of flow for a share of weight"
              zeroIsBlank
            />
            <SheetNumber
              path="borrowedBaseline.standardUncertainty"
              label="Doubt of it, one sigma"
              zeroIsBlank
            />
            <SheetText path="borrowedBaseline.from" label="From which flights" long />
          </div>
        )}
      </section>
      <ArchiveBlock />
    </>
  );
}

function borrowing(sheet: FlightSheet): FlightSheet {
  return {
    ...sheet,
    borrowedBaseline: { weightElasticity: 0, standardUncertainty: 0, from: '' },
  };
}

function notBorrowing(sheet: FlightSheet): FlightSheet {
  const { borrowedBaseline: _gone, ...rest } = sheet;
  return rest;
}
