import type { FlightSheet } from '../../../record/sheet.ts';
import { WINGS } from '../../../record/sheet.ts';
import { measureWords } from '../../../record/sheetMeasure.ts';
import { Planform } from '../wing/Planform.tsx';
import { PadSide, Ruled } from './PadSide.tsx';

const LOOKS = ['1', '2', '3', '4', '5', '6', '7'];
const WING_WORDS = { L: 'Left wing', R: 'Right wing' } as const;

/** The wing by panel, moisture and samples, and what is looked at after landing. */
export function WingPage({ sheet }: { sheet: FlightSheet }) {
  const below = sheet.laminarBelow;
  return (
    <>
      <PadSide sheet={sheet} title="Wing">
        <Planform panels={sheet.panels} probes={sheet.probes} plan={sheet.aircraft.planform} />
        <p>
          L laminar, I intermittent, T turbulent, a dash not assessed; or probes laminar of all.
          {below === undefined
            ? ''
            : ` Laminar below ${measureWords(below)} under free-stream total.`}
        </p>
        {WINGS.map((wing) => (
          <Ruled
            key={wing}
            name={WING_WORDS[wing]}
            columns={[
              { head: WING_WORDS[wing], share: 1.4 },
              { head: 'Probes', share: 2.2 },
              { head: 'Covers off', share: 1.3 },
              ...LOOKS.map((look) => ({ head: look, share: 1 })),
              { head: 'After landing', share: 2 },
            ]}
            rows={[
              ['UTC'],
              ...sheet.panels
                .filter((panel) => panel.wing === wing)
                .map((panel) => [panel.id, probesOf(sheet, panel.id)]),
            ]}
            empty={sheet.panels.some((panel) => panel.wing === wing) ? 0 : 6}
          />
        ))}
      </PadSide>
      <PadSide sheet={sheet} title="Moisture, samples, after flight">
        <h3>Moisture and samples</h3>
        <Ruled
          name="Moisture and samples"
          columns={[
            { head: 'Seen', share: 1.2 },
            { head: 'In', share: 1.2 },
            { head: 'First lost', share: 1.8 },
            { head: 'Sampler, id', share: 1.6 },
            { head: 'Open', share: 1.2 },
            { head: 'Shut', share: 1.2 },
            { head: 'Out', share: 1.2 },
            { head: 'All back', share: 1.2 },
            { head: 'Look', share: 2 },
          ]}
          empty={9}
        />
        <h3>Fuel at shutdown</h3>
        <Ruled
          name="Fuel at shutdown"
          columns={[
            { head: 'Gauge', share: 2 },
            { head: 'At start', share: 2 },
            { head: 'At shutdown', share: 2 },
            { head: 'UTC', share: 1.4 },
          ]}
          rows={sheet.instruments
            .filter(({ quantity }) => quantity === 'fuelUsed' || quantity === 'tankFuel')
            .map(({ id, unit }) => [`${id}, ${unit}`])}
          empty={1}
        />
        <h3>Squawks</h3>
        <Ruled
          name="Squawks"
          columns={[
            { head: 'Panel', share: 1 },
            { head: 'At % of chord', share: 1.2 },
            { head: 'What was found', share: 5 },
            { head: 'By', share: 1 },
          ]}
          empty={6}
        />
      </PadSide>
    </>
  );
}

/** "L01 to L04": names of one panel follow each other. */
function probesOf(sheet: FlightSheet, panel: string): string {
  const ids = sheet.probes.filter((probe) => probe.panel === panel).map((probe) => probe.id);
  const [first] = ids;
  const last = ids.at(-1);
  return first === undefined || last === undefined
    ? ''
    : ids.length < 3
      ? ids.join(', ')
      : `${first} to ${last}`;
}
