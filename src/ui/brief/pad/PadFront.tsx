import type { FlightSheet } from '../../../record/sheet.ts';
import { measureWords, numberWords } from '../../../record/sheetMeasure.ts';
import type { Measure } from '../../../record/measure.ts';
import { PadSide, Ruled } from './PadSide.tsx';
import styles from './Pad.module.css';

/** Front of the pad: limits, people, clocks and the plan. */
export function PadFront({ sheet }: { sheet: FlightSheet }) {
  const { condition, tolerances, limits, weights } = sheet;
  const cards = sheet.testCards.toSorted((a, b) => a.order - b.order);
  const facts: readonly (readonly [string, string])[] = [
    [
      'Mach',
      orLine(condition.mach, `${numberWords(condition.mach)} ± ${numberWords(tolerances.mach)}`),
    ],
    [
      'Height',
      orLine(
        condition.pressureAltitude.value,
        `${measureWords(condition.pressureAltitude)} ± ${measureWords(tolerances.altitude)}`,
      ),
    ],
    [
      'Drift at most',
      orLine(
        tolerances.machRatePerMin,
        `Mach ${numberWords(tolerances.machRatePerMin)} a minute, ${measureWords(tolerances.climb)}`,
      ),
    ],
    ['Joker', given(limits.joker)],
    ['Bingo', given(limits.bingo)],
    ['Ramp weight', given(weights.ramp)],
    ['Ramp fuel', given(weights.rampFuel)],
    ['Fuel density, at °C', ''],
  ];
  return (
    <PadSide sheet={sheet} title="Flight pad">
      <p className={styles.stop}>
        <b>Stop words:</b> {sheet.stopWords ?? ''}
      </p>
      <dl className={styles.facts}>
        {facts.map(([name, words]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      <h3>Time hack: all clocks at one call</h3>
      <Ruled
        name="Time hacks"
        columns={[
          { head: 'Hack', share: 1.2 },
          ...sheet.clocks.map((clock) => ({ head: clock.owner || clock.id, share: 2 })),
          { head: 'Frame, counter', share: 1.6 },
          { head: 'Initials', share: 1 },
        ]}
        rows={[['1, before start'], ['2, after shutdown']]}
        empty={1}
      />
      <h3>People</h3>
      <Ruled
        name="People"
        columns={[
          { head: 'Initials', share: 1 },
          { head: 'Role', share: 2 },
          { head: 'Name', share: 3 },
          { head: 'Signature', share: 3 },
        ]}
        rows={sheet.people.map((person) => [person.id, person.role, person.name ?? ''])}
        empty={1}
      />
      <h3>Test points in order</h3>
      <Ruled
        name="Test points"
        columns={[
          { head: 'No', share: 0.6 },
          { head: 'Point', share: 1.1 },
          { head: 'What', share: 3.4 },
          { head: 'Suction', share: 2 },
          { head: 'Prio', share: 0.7 },
          { head: 'Reads', share: 0.8 },
          { head: 'Fuel', share: 1.2 },
          { head: 'Start', share: 1.5 },
          { head: 'End', share: 1.5 },
          { head: 'How it ended', share: 2 },
        ]}
        rows={cards.map((card) => [
          String(card.order),
          card.id,
          card.title,
          card.suction === 'off' ? 'off' : card.setting,
          String(card.priority),
          `${card.minimumReadings}`,
          card.expectedFuel === undefined ? '' : measureWords(card.expectedFuel),
        ])}
        empty={Math.max(2, 6 - cards.length)}
      />
      {sheet.legs.length === 0 ? null : <p>{`Legs: ${sheet.legs.join('; ')}`}</p>}
    </PadSide>
  );
}

function given(measure: Measure | undefined): string {
  return measure === undefined || measure.value === 0 ? '' : measureWords(measure);
}

function orLine(value: number, words: string): string {
  return value === 0 ? '' : words;
}
