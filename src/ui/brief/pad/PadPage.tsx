import type { FlightSheet } from '../../../record/sheet.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { useKeptTexts } from '../useKept.ts';
import { EventPages } from './EventPages.tsx';
import { PadFront } from './PadFront.tsx';
import { ReadingPages } from './ReadingPages.tsx';
import { WingPage } from './WingPage.tsx';
import styles from './Pad.module.css';

/** The paper that stays on board: the same sheet, ruled to be written on when the tablet cannot. */
export function PadPage(props: { readonly sheet: FlightSheet; readonly onBack: () => void }) {
  const { sheet } = props;
  const texts = useKeptTexts('pad');
  const paper = texts.of('paper', 'a4') === 'letter' ? 'letter' : 'a4';
  return (
    <div className={styles.view}>
      <div className={styles.bar}>
        <GroundButton act="pad.back" onPress={props.onBack}>
          Back to the flight sheet
        </GroundButton>
        {(['a4', 'letter'] as const).map((one) => (
          <GroundButton
            key={one}
            act={`pad.paper=${one}`}
            pressed={one === paper}
            onPress={() => texts.put('paper', one)}
          >
            {one === 'a4' ? 'A4' : 'Letter'}
          </GroundButton>
        ))}
        <GroundButton act="pad.print" strong onPress={() => window.print()}>
          Print
        </GroundButton>
      </div>
      <div className={paper === 'a4' ? styles.a4 : styles.letter}>
        <PadFront sheet={sheet} />
        <EventPages sheet={sheet} />
        <ReadingPages sheet={sheet} />
        <WingPage sheet={sheet} />
      </div>
    </div>
  );
}
