import { TickField } from '../../kit/Ground.tsx';
import { CAUTIONS } from './cautions.ts';
import type { KeptTexts } from '../useKept.ts';
import styles from '../Brief.module.css';

/** The cautions, each ticked by a person. What stays open is named in the record when the brief is accepted. */
export function CautionsPage({ ticks }: { ticks: KeptTexts }) {
  return (
    <section className={styles.page} aria-label="Cautions">
      <h2>Read and agreed</h2>
      {CAUTIONS.map((caution) => (
        <TickField
          key={caution.id}
          act={`caution=${caution.id}`}
          label={caution.words}
          value={ticks.of(caution.id) === 'yes'}
          onChange={(value) => ticks.put(caution.id, value ? 'yes' : '')}
        />
      ))}
    </section>
  );
}
