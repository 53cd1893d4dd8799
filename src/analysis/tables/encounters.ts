import type { Encounter } from '../encounters/encounters.ts';
import type { Loss } from '../encounters/losses.ts';
import type { SampleResults } from '../encounters/samples.ts';
import { WINGS } from '../../record/sheet.ts';
import { cell, percent, remark, type CellsOf, type ResultTable } from './table.ts';

/** Each encounter as each wing saw it, one a row. */
export function encountersTable(met: readonly Encounter[], cells: CellsOf): ResultTable {
  return {
    name: 'encounters',
    header: [
      'encounter',
      'wing',
      'entry_base_utc',
      'entry_standard_uncertainty_s',
      'exit_base_utc',
      'inside_s',
      'look',
      'cover',
      'ice_seen',
      'loss_lag_s',
      'loss_lag_standard_uncertainty_s',
      'loss_remark',
      'first_back_lag_s',
      'first_back_remark',
      'back_to_count_lag_s',
      'back_to_count_lag_standard_uncertainty_s',
      'back_to_count_remark',
      'lost_for_s',
      'laminar_area_before_pct',
      'laminar_area_while_lost_pct',
      `fuel_forgone_${cells.massUnit}`,
      'fuel_forgone_remark',
      'entries',
    ],
    rows: met.flatMap((encounter) =>
      WINGS.map((wing) => {
        const { entry, exit, inMoisture, lost, area, fuelForgone } = encounter;
        const { loss, recovery } = encounter.wings[wing];
        return [
          encounter.label,
          wing,
          cells.time(entry.at, entry.by),
          entry.standardUncertaintyS,
          cells.time(exit?.at ?? null, exit?.by),
          cell(inMoisture, ({ durationS }) => durationS),
          encounter.look,
          encounter.cover,
          encounter.iceSeen === null ? null : String(encounter.iceSeen),
          cell(loss.first, ({ lagS }) => lagS),
          cell(loss.first, ({ lagStandardUncertaintyS }) => lagStandardUncertaintyS),
          remark(loss.first),
          cell(recovery.sustained, ({ lagS }) => lagS),
          remark(recovery.sustained),
          cell(recovery.toCount, ({ lagS }) => lagS),
          cell(recovery.toCount, ({ lagStandardUncertaintyS }) => lagStandardUncertaintyS),
          remark(recovery.toCount),
          cell(lost, ({ lostForS }) => lostForS),
          cell(area, ({ before }) => percent(before.byAreaFraction)),
          cell(area, ({ during }) => percent(during.byAreaFraction)),
          cell(fuelForgone, ({ fuelKg }) => cells.mass(fuelKg)),
          remark(fuelForgone),
          cells.entries(
            [loss.first, recovery.toCount].flatMap((answer) =>
              answer.kind === 'answer' ? answer.how.entries : answer.entries,
            ),
          ),
        ];
      }),
    ),
  };
}

const CANDIDATES = [
  'moisture',
  'suctionChange',
  'offCondition',
  'wedge',
  'chronic',
  'root',
  'unexplained',
] as const satisfies readonly Loss['evidence'][number]['candidate'][];

/** Each loss with the finding on every candidate. A cause stands only where a person assigned one. */
export function lossesTable(losses: readonly Loss[], cells: CellsOf): ResultTable {
  return {
    name: 'losses',
    header: [
      'time_base_utc',
      'time_standard_uncertainty_s',
      'wing',
      'kind',
      'laminar_before',
      'laminar_after',
      'of',
      'probes',
      'panels',
      'found_in_reading',
      ...CANDIDATES.map((candidate) => `evidence_${snake(candidate)}`),
      'causes_assigned',
      'entries',
    ],
    rows: losses.map((loss) => [
      cells.time(loss.seen.at, loss.seen.by),
      loss.seen.standardUncertaintyS,
      loss.wing,
      loss.kind,
      loss.from?.laminar ?? null,
      loss.to?.laminar ?? null,
      loss.to?.of ?? loss.from?.of ?? null,
      loss.probes.join(' '),
      loss.panels.join(' '),
      String(loss.inReading),
      ...CANDIDATES.map(
        (candidate) => loss.evidence.find((one) => one.candidate === candidate)?.finding ?? null,
      ),
      loss.causes.map(({ cause }) => cause).join('; '),
      cells.entries([loss.seen.by, ...loss.evidence.flatMap(({ entries }) => entries)]),
    ]),
  };
}

function snake(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

/** Each sample: exposure, what it met, what the laboratory found. */
export function samplesTable({ samples }: SampleResults, cells: CellsOf): ResultTable {
  return {
    name: 'samples',
    header: [
      'sample',
      'sampler',
      'purpose',
      'opened_base_utc',
      'closed_base_utc',
      'exposure_s',
      'encounters',
      'in_moisture_pct',
      'mean_size_micrometre',
      'number_per_litre',
      'number_less_blank_per_litre',
      'laboratory_remark',
      'blank_remark',
      'entries',
    ],
    rows: samples.map((one) => {
      const { exposure, lab, lessBlank } = one;
      const ids = exposure.kind === 'answer' ? exposure.how.entries : exposure.entries;
      return [
        one.sample,
        one.sampler,
        one.purpose,
        cells.time(one.opened, ids[0]),
        cells.time(one.closed, ids[1] ?? ids[0]),
        cell(exposure, ({ exposureS }) => exposureS),
        one.joins.map(({ label }) => label).join(' '),
        cell(one.inMoistureFraction, percent),
        cell(lab, ({ meanSizeM }) => (meanSizeM === null ? null : 1e6 * meanSizeM)),
        cell(lab, ({ numberPerM3 }) => (numberPerM3 === null ? null : numberPerM3 / 1000)),
        cell(lessBlank, ({ numberPerM3 }) => numberPerM3 / 1000),
        remark(lab),
        remark(lessBlank),
        cells.entries([...ids, ...(lab.kind === 'answer' ? lab.how.entries : [])]),
      ];
    }),
  };
}
