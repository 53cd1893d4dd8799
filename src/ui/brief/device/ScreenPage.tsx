import { GroundButton } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import {
  sizeWords,
  TEXT_SIZES,
  THEME_WORDS,
  THEMES,
  useSettings,
  type SettingsStore,
} from '../../kit/settings.ts';
import styles from '../Brief.module.css';

/** ISO/IEC 7810 ID-1, the bank card: 85.60 by 53.98 mm. From memory, unverified. */
const CARD_MM = { width: 85.6, height: 53.98 };

const HANDS = [
  { value: 'right', label: 'Right' },
  { value: 'left', label: 'Left' },
] as const;

/** Theme, text size, hand and millimetre of this screen; the outline is made to match a bank card that is laid on it. */
export function ScreenPage(props: { readonly settings: SettingsStore; readonly pxPerMm: number }) {
  const { settings, pxPerMm } = props;
  const { pxPerMm: set, theme, hand, textSize } = useSettings(settings);
  const step = (change: number) =>
    settings.set({ pxPerMm: Math.min(30, Math.max(2, Number((pxPerMm + change).toFixed(2)))) });
  return (
    <section className={styles.page} aria-label="This screen">
      <h2>This screen</h2>
      <div className={styles.fields}>
        <ChipField
          act="screen.theme"
          label="Theme"
          value={theme}
          choices={THEMES.map((value) => ({ value, label: THEME_WORDS[value] }))}
          onChange={(value) => settings.set({ theme: value })}
        />
        <ChipField
          act="screen.text"
          label="Text size"
          value={String(textSize)}
          choices={TEXT_SIZES.map((size) => ({ value: String(size), label: sizeWords(size) }))}
          onChange={(value) =>
            settings.set({ textSize: TEXT_SIZES.find((size) => String(size) === value) ?? 1 })
          }
        />
        <ChipField
          act="screen.hand"
          label="The hand that touches"
          value={hand}
          choices={HANDS}
          onChange={(value) => settings.set({ hand: value })}
        />
      </div>
      <h2>Size by bank card</h2>
      <p>Lay a bank card on the outline and make the outline as large as the card.</p>
      <svg
        className={styles.card}
        width={CARD_MM.width * pxPerMm}
        height={CARD_MM.height * pxPerMm}
        role="img"
        aria-label={`Outline of a card at ${pxPerMm} pixels a millimetre`}
      >
        <rect
          x="1"
          y="1"
          width={CARD_MM.width * pxPerMm - 2}
          height={CARD_MM.height * pxPerMm - 2}
        />
      </svg>
      <p>
        {set === null
          ? `${pxPerMm.toFixed(2)} pixels a millimetre, a guess from the size of the screen.`
          : `${pxPerMm.toFixed(2)} pixels a millimetre, set by card.`}
      </p>
      <div className={styles.keys}>
        <GroundButton act="size.muchSmaller" onPress={() => step(-0.2)}>
          Much smaller
        </GroundButton>
        <GroundButton act="size.smaller" onPress={() => step(-0.02)}>
          Smaller
        </GroundButton>
        <GroundButton act="size.larger" onPress={() => step(0.02)}>
          Larger
        </GroundButton>
        <GroundButton act="size.muchLarger" onPress={() => step(0.2)}>
          Much larger
        </GroundButton>
        <GroundButton act="size.match" strong onPress={() => settings.set({ pxPerMm })}>
          It matches
        </GroundButton>
        <GroundButton act="size.forget" onPress={() => settings.set({ pxPerMm: null })}>
          Forget it
        </GroundButton>
      </div>
    </section>
  );
}
