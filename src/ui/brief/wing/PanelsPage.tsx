import { blankPanel, panelsFor } from '../../../record/blankSheet.ts';
import type { Panel } from '../../../record/sheet.ts';
import { measureWords, unitsOf, unitWords } from '../../../record/sheetMeasure.ts';
import { panelAreaOnPlan, withPlanAreas } from '../../../record/wingPlan.ts';
import { GroundButton, NumberField } from '../../kit/Ground.tsx';
import { ItemKeys } from '../sheet/ItemKeys.tsx';
import { typedNumber } from '../numberText.ts';
import { Planform } from './Planform.tsx';
import { SheetGroup } from '../sheet/SheetGroup.tsx';
import {
  SheetCell,
  SheetChoice,
  SheetMeasure,
  SheetNumber,
  SheetText,
} from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import { useKeptTexts } from '../useKept.ts';
import styles from '../Brief.module.css';

/** The suction panels of both wings: made in one go, then corrected one by one. */
export function PanelsPage() {
  const draft = useDraft();
  const { sheet, item } = draft;
  const open = item === null ? undefined : sheet.panels[item];
  if (item !== null && open !== undefined) {
    return <PanelItem key={item} index={item} panel={open} />;
  }
  return (
    <>
      <WingPlanFields />
      <MakePanels />
      {sheet.panels.length === 0 ? null : (
        <>
          <Planform panels={sheet.panels} probes={sheet.probes} plan={sheet.aircraft.planform} />
          <AreasOffPlan />
          <div className={styles.cellsHead} aria-hidden="true">
            <span>Panel</span>
            <span>Area</span>
            <span>From, % span</span>
            <span>To, % span</span>
          </div>
          <ul className={styles.rows}>
            {sheet.panels.map((panel, index) => (
              <PanelRow key={index} panel={panel} index={index} />
            ))}
          </ul>
        </>
      )}
      <div className={styles.keys}>
        {(['L', 'R'] as const).map((wing) => (
          <GroundButton
            key={wing}
            act={`panels.add${wing}`}
            onPress={() =>
              draft.replace({ ...sheet, panels: [...sheet.panels, blankPanel(sheet, wing)] })
            }
          >
            {wing === 'L' ? 'Add one on the left wing' : 'Add one on the right wing'}
          </GroundButton>
        ))}
      </div>
    </>
  );
}

function PanelRow({ panel, index }: { panel: Panel; index: number }) {
  const draft = useDraft();
  const at = `panels.${index}` as const;
  const id = panel.id;
  return (
    <li className={styles.cells}>
      <GroundButton act={`panels.item=${index}`} onPress={() => draft.openItem(index)}>
        <b>{id}</b>
      </GroundButton>
      <SheetCell path={`${at}.area.value`} label={`Panel ${id}, area`} zeroIsBlank />
      <SheetCell
        path={`${at}.spanFromFraction`}
        label={`Panel ${id}, from % of span`}
        scale={100}
        optional
      />
      <SheetCell
        path={`${at}.spanToFraction`}
        label={`Panel ${id}, to % of span`}
        scale={100}
        optional
      />
    </li>
  );
}

function PanelItem({ index, panel }: { index: number; panel: Panel }) {
  const draft = useDraft();
  const at = `panels.${index}` as const;
  const { wingArea } = draft.sheet.aircraft;
  const sketched = panelAreaOnPlan(draft.sheet, panel);
  return (
    <>
      <ItemKeys
        count={draft.sheet.panels.length}
        title={`Panel ${panel.id}`}
        removeAct="panels.remove"
        onRemove={() => draft.put(at, undefined, { text: '', words: '' })}
      />
      <div className={styles.fields}>
        <SheetText path={`${at}.id`} label="Name" />
        <SheetNumber path={`${at}.number`} label="Number from the root" />
        <SheetChoice
          path={`${at}.wing`}
          label="Wing"
          choices={[
            { value: 'L', label: 'Left' },
            { value: 'R', label: 'Right' },
          ]}
        />
        <SheetMeasure
          path={`${at}.area`}
          label="Area"
          units={unitsOf('area')}
          unit={wingArea.unit}
        />
        <SheetMeasure
          path={`${at}.meanChord`}
          label="Mean chord"
          units={unitsOf('length')}
          unit={draft.sheet.heightUnit}
          optional
        />
        <SheetNumber
          path={`${at}.spanFromFraction`}
          label="Begins at"
          unit="% of span"
          scale={100}
          optional
        />
        <SheetNumber
          path={`${at}.spanToFraction`}
          label="Ends at"
          unit="% of span"
          scale={100}
          optional
        />
        <SheetNumber
          path={`${at}.chordFromFraction`}
          label="From, on the chord"
          unit="% of chord"
          scale={100}
          optional
        />
        <SheetNumber
          path={`${at}.chordToFraction`}
          label="To, on the chord"
          unit="% of chord"
          scale={100}
          optional
        />
        <SheetNumber
          path={`${at}.laminarToChordFraction`}
          label="Laminar, when it holds, to"
          unit="% of chord"
          scale={100}
          optional
        />
        <SheetText path={`${at}.skin`} label="Skin" optional hint="Slots, holes, material." />
        <SheetText
          path={`${at}.suctionRegions`}
          label="Suction regions, with commas"
          optional
          hint="Offered in flight when suction changes."
        />
        <SheetText path={`${at}.coverSegment`} label="Cover segment over it" optional />
      </div>
      {sketched === null ? null : (
        <div className={styles.keys}>
          <p>{`Its limits on the wing make ${measureWords(sketched)}.`}</p>
          <GroundButton
            act="panels.sketched"
            disabled={sketched.value === panel.area.value}
            onPress={() => draft.put(`${at}.area`, sketched, { text: '', words: '' })}
          >
            Take that area
          </GroundButton>
        </div>
      )}
    </>
  );
}

/** Half a wing, straight from root to tip: with it the sketch is true and areas can be worked out. */
function WingPlanFields() {
  const { sheet } = useDraft();
  const unit = sheet.heightUnit;
  const zero = { value: 0, unit };
  const length = { units: unitsOf('length'), unit } as const;
  return (
    <SheetGroup
      path="aircraft.planform"
      label="Draw the wing from its span and chords"
      blank={{ semiSpan: zero, rootChord: zero, tipChord: zero }}
    >
      <div className={styles.fields}>
        <SheetMeasure path="aircraft.planform.semiSpan" label="Half span" {...length} />
        <SheetMeasure path="aircraft.planform.rootChord" label="Root chord" {...length} />
        <SheetMeasure path="aircraft.planform.tipChord" label="Tip chord" {...length} />
        <SheetNumber
          path="aircraft.planform.leadingEdgeSweepDeg"
          label="Sweep of the leading edge"
          unit="°"
          optional
        />
      </div>
    </SheetGroup>
  );
}

/** One key for all areas that the sketch can give; each stays a field that may be put otherwise. */
function AreasOffPlan() {
  const draft = useDraft();
  const { sheet } = draft;
  const known = sheet.panels.filter((panel) => panelAreaOnPlan(sheet, panel) !== null).length;
  return known === 0 ? null : (
    <GroundButton act="panels.areas" onPress={() => draft.replace(withPlanAreas(sheet))}>
      {`Work out ${known === 1 ? 'the area of 1 panel' : `the areas of ${known} panels`} from the wing`}
    </GroundButton>
  );
}

function MakePanels() {
  const draft = useDraft();
  const { sheet } = draft;
  const texts = useKeptTexts(`panels-${sheet.id}`);
  const aWing = typedNumber(texts.of('n', '4'), 'Panels a wing');
  const area = typedNumber(texts.of('area'), 'Area of each');
  const from = typedNumber(texts.of('from', '10'), 'From');
  const to = typedNumber(texts.of('to', '90'), 'To');
  const chordFrom = typedNumber(texts.of('chordFrom'), 'Chord from');
  const chordTo = typedNumber(texts.of('chordTo'), 'Chord to');
  const sound =
    chordFrom.kind !== 'fault' &&
    chordTo.kind !== 'fault' &&
    aWing.kind === 'number' &&
    Number.isInteger(aWing.value) &&
    aWing.value >= 1 &&
    aWing.value <= 12 &&
    area.kind !== 'fault' &&
    from.kind === 'number' &&
    to.kind === 'number' &&
    from.value < to.value;
  const make = () => {
    if (sound) {
      const panels = panelsFor({
        aWing: aWing.value,
        area: area.kind === 'number' ? area.value : 0,
        areaUnit: sheet.aircraft.wingArea.unit,
        spanFromFraction: from.value / 100,
        spanToFraction: to.value / 100,
      });
      const onChord = panels.map((panel) => ({
        ...panel,
        ...(chordFrom.kind === 'number' && { chordFromFraction: chordFrom.value / 100 }),
        ...(chordTo.kind === 'number' && { chordToFraction: chordTo.value / 100 }),
      }));
      const made = { ...sheet, panels: onChord };
      draft.replace(area.kind === 'blank' ? withPlanAreas(made) : made);
    }
  };
  const field = (name: string, label: string, first: string, unit?: string) => (
    <NumberField
      act={`panels.${name}`}
      label={label}
      value={texts.of(name, first)}
      onChange={(text) => texts.put(name, text)}
      {...(unit !== undefined && { unit })}
    />
  );
  return (
    <section className={styles.make}>
      {field('n', 'Panels a wing, 1 to 12', '4')}
      {field('area', 'Area of each', '', unitWords(sheet.aircraft.wingArea.unit))}
      {field('from', 'From', '10', '% of span')}
      {field('to', 'To', '90', '% of span')}
      {field('chordFrom', 'From', '', '% of chord')}
      {field('chordTo', 'To', '', '% of chord')}
      <GroundButton
        act="panels.make"
        strong={sheet.panels.length === 0}
        disabled={!sound}
        onPress={make}
      >
        {sheet.panels.length === 0 ? 'Make them' : 'Make them anew'}
      </GroundButton>
    </section>
  );
}
