import { useState } from 'react';
import { GroundButton } from '../kit/Ground.tsx';
import { AIR, GROUND, type ManualSection } from './pages.ts';
import styles from './Manual.module.css';

/** The manual: two pages, kept on the tablet with the app. */
export function Manual(props: { readonly onBack: () => void }) {
  const [page, setPage] = useState<'air' | 'ground'>('air');
  return (
    <div className={styles.manual}>
      <header>
        <h1>Manual</h1>
        <nav aria-label="Pages of the manual">
          <GroundButton act="manual.air" pressed={page === 'air'} onPress={() => setPage('air')}>
            1 In the air
          </GroundButton>
          <GroundButton
            act="manual.ground"
            pressed={page === 'ground'}
            onPress={() => setPage('ground')}
          >
            2 On the ground
          </GroundButton>
          <GroundButton act="manual.back" strong onPress={props.onBack}>
            Back
          </GroundButton>
        </nav>
      </header>
      <main>
        {(page === 'air' ? AIR : GROUND).map((section) => (
          <Section key={section.head} {...section} />
        ))}
      </main>
    </div>
  );
}

function Section({ head, lines }: ManualSection) {
  return (
    <section>
      <h2>{head}</h2>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </section>
  );
}
