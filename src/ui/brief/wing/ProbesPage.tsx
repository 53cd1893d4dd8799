import { freeId, probesFor } from '../../../record/blankSheet.ts';
import type { Probe } from '../../../record/sheet.ts';
import { measureWords, unitsOf } from '../../../record/sheetMeasure.ts';
import { GroundButton } from '../../kit/Ground.tsx';
import { ChipField } from '../../kit/GroundChips.tsx';
import { ItemKeys } from '../sheet/ItemKeys.tsx';
import { SheetChoice, SheetMeasure, SheetText, SheetTick } from '../sheet/SheetFields.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import { useKeptTexts } from '../useKept.ts';
import styles from '../Brief.module.css';

const COUNTS = ['1', '2', '3', '4', '5', '6', '8'] as const;

/** The probes that call laminar or turbulent: so many behind each panel, then corrected one by one. */
export function ProbesPage() {
  const draft = useDraft();
  const { sheet, item } = draft;
  const texts = useKeptTexts(`probes-${sheet.id}`);
  const open = item === null ? undefined : sheet.probes[item];
  if (item !== null && open !== undefined) {
    return <ProbeItem key={item} index={item} probe={open} />;
  }
  const count = COUNTS.find((one) => one === texts.of('k', '4')) ?? '4';
  return (
    <>
      <section className={styles.make}>
        <ChipField
          act="probes.k"
          label="Behind each panel, sharing its area"
          value={count}
          choices={COUNTS.map((value) => ({ value, label: value }))}
          onChange={(value) => texts.put('k', value)}
        />
        <GroundButton
          act="probes.make"
          strong={sheet.probes.length === 0}
          disabled={sheet.panels.length === 0}
          onPress={() =>
            draft.replace({ ...sheet, probes: probesFor(sheet.panels, Number(count)) })
          }
        >
          {sheet.probes.length === 0 ? 'Make them' : 'Make them anew'}
        </GroundButton>
        <GroundButton
          act="probes.add"
          disabled={sheet.panels.length === 0}
          onPress={() => {
            const [panel] = sheet.panels;
            if (panel !== undefined) {
              const probe: Probe = {
                id: freeId('P', sheet.probes),
                wing: panel.wing,
                panel: panel.id,
                form: 'trailingEdgeTotal',
                area: { value: 0, unit: panel.area.unit },
                serviceable: true,
              };
              draft.replace({ ...sheet, probes: [...sheet.probes, probe] });
              draft.openItem(sheet.probes.length);
            }
          }}
        >
          Add one
        </GroundButton>
      </section>
      <SheetMeasure
        path="laminarBelow"
        label="Laminar below, under free-stream total"
        units={unitsOf('pressure')}
        unit="inH2O"
        optional
      />
      {sheet.panels.map((panel) => (
        <ProbesOfPanel
          key={panel.id}
          name={`Panel ${panel.id}`}
          of={(probe) => probe.panel === panel.id}
        />
      ))}
      <ProbesOfPanel
        name="On no panel of this flight sheet"
        of={(probe) => !sheet.panels.some((panel) => panel.id === probe.panel)}
      />
    </>
  );
}

function ProbesOfPanel(props: { name: string; of: (probe: Probe) => boolean }) {
  const draft = useDraft();
  const rows = draft.sheet.probes.flatMap((probe, index) =>
    props.of(probe) ? [{ probe, index }] : [],
  );
  if (rows.length === 0) {
    return null;
  }
  return (
    <section className={styles.probeRow}>
      <h3>{props.name}</h3>
      <div className={styles.keys}>
        {rows.map(({ probe, index }) => (
          <GroundButton
            key={index}
            act={`probes.item=${index}`}
            onPress={() => draft.openItem(index)}
          >
            <b>{probe.id}</b>
            <br />
            {probe.serviceable ? measureWords(probe.area) : 'out of service'}
          </GroundButton>
        ))}
      </div>
    </section>
  );
}

function ProbeItem({ index, probe }: { index: number; probe: Probe }) {
  const draft = useDraft();
  const at = `probes.${index}` as const;
  const { panels } = draft.sheet;
  const listed = panels.some((panel) => panel.id === probe.panel)
    ? panels.map((panel) => panel.id)
    : [...panels.map((panel) => panel.id), probe.panel];
  return (
    <>
      <ItemKeys
        count={draft.sheet.probes.length}
        title={`Probe ${probe.id}`}
        removeAct="probes.remove"
        onRemove={() => draft.put(at, undefined, { text: '', words: '' })}
      />
      <div className={styles.fields}>
        <SheetText path={`${at}.id`} label="Name" />
        <SheetChoice
          path={`${at}.wing`}
          label="Wing"
          choices={[
            { value: 'L', label: 'Left' },
            { value: 'R', label: 'Right' },
          ]}
        />
      </div>
      <SheetChoice
        path={`${at}.panel`}
        label="Behind panel"
        choices={[...new Set(listed)].map((value) => ({ value, label: value }))}
      />
      <div className={styles.fields}>
        <SheetChoice
          path={`${at}.form`}
          label="Kind"
          choices={[
            { value: 'trailingEdgeTotal', label: 'Trailing-edge total' },
            { value: 'rake', label: 'Rake' },
          ]}
        />
        <SheetMeasure
          path={`${at}.area`}
          label="Area it stands for"
          units={unitsOf('area')}
          unit={probe.area.unit}
        />
      </div>
      <SheetTick path={`${at}.serviceable`} label="Serviceable" />
    </>
  );
}
