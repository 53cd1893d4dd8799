import { median } from '../../aero/statistics/descriptive.ts';
import type { TwoByTwo } from '../../aero/statistics/fisherExact.ts';
import type { EntryId } from '../../record/brand.ts';
import type { FlightView } from '../../record/flight.ts';
import type { FlightSheet } from '../../record/sheet.ts';
import type { Answer } from '../answer.ts';
import { clearRuns } from './clearRuns.ts';
import { encounters, type Encounter } from './encounters.ts';
import { fisherTest, type FisherTest } from './fisherTest.ts';
import { distinct } from './lossLags.ts';
import { particleEncounters } from './particles.ts';
import { isTurbulent, probeRuns } from './probeRuns.ts';
import { isSameSetting, nominalSetting, settingsOf } from './settings.ts';
import { findingsByPanel, hungCovers } from './surface.ts';
import { wholeWingInEncounter, wholeWingInRuns, type WholeWing } from './wholeWingLoss.ts';

/** A 2 x 2 table with Fisher's exact test. It may show that two things go together, never that one made the other. */
export interface Association {
  readonly question: Question;
  /** Rows: exposed, not exposed. Columns: lost or turbulent, not. Null where no table is made. */
  readonly table: TwoByTwo | null;
  readonly leftOut: readonly { readonly because: LeftOutBecause; readonly count: number }[];
  readonly test: Answer<FisherTest, 'zeroMargin' | 'tooFewJoinedSamples', 'fisherExact'>;
  readonly cautions: readonly Caution[];
}

export type Question =
  /** Moisture encounters against complete clear-air runs: a wing lost as a whole. */
  | 'lossInMoisture'
  /** Probes behind a cover that hung against all others: turbulent at the nominal setting. */
  | 'turbulentBehindHungCover'
  /** Panels with a finding against clean ones: any probe turbulent at the nominal setting. */
  | 'turbulentWithFinding'
  /** Encounters with larger particles than the median one against the others: lost sooner than the median. */
  | 'particleSizeAndLoss';

type LeftOutBecause = 'wingsNotSeen' | 'noNominalClearRun' | 'notInspected' | 'noSizeOrNoLoss';

type Caution = 'associationNotCause' | 'encountersFollowEachOther' | 'probesOfOnePanelShareACause';

/** With fewer no table of any shape is less likely than 5 in 100 by chance: 3 against 4 gives 1 in 35, 3 against 3 1 in 10. */
const FEWEST_JOINED_SAMPLES = 7;

/** The four questions, always in this order; none without a flight sheet. */
export function associations(view: FlightView): readonly Association[] {
  const { sheet } = view.state;
  if (sheet === null) return [];
  const met = encounters(view);
  const atNominal = turbulentAtNominal(view, sheet);
  return [
    lossInMoisture(view, sheet, met),
    behindHungCover(view, atNominal),
    withFinding(view, sheet, atNominal),
    particleSize(view, met),
  ];
}

function lossInMoisture(
  view: FlightView,
  sheet: FlightSheet,
  met: readonly Encounter[],
): Association {
  const lostInRun = wholeWingInRuns(view.state, sheet);
  const complete = clearRuns(view.state, settingsOf(view.state, sheet)).filter(
    ({ run }) => run.state === 'complete',
  );
  const rows = [met.map(wholeWingInEncounter), complete.map(lostInRun)] as const;
  const seen = rows.map((row) => row.filter(({ lost }) => lost !== null));
  const count = (row: readonly WholeWing[] | undefined, lost: boolean): number =>
    (row ?? []).filter((one) => one.lost === lost).length;
  return tested({
    question: 'lossInMoisture',
    table: [
      [count(seen[0], true), count(seen[0], false)],
      [count(seen[1], true), count(seen[1], false)],
    ],
    leftOut: { wingsNotSeen: rows.flat().filter(({ lost }) => lost === null).length },
    entries: seen.flat().flatMap(({ entries }) => entries),
    cautions: ['encountersFollowEachOther'],
  });
}

/** One trailing-edge probe in the clear-air runs at the nominal setting; null where there was none. */
interface AtNominal {
  readonly panel: string;
  readonly turbulent: boolean | null;
  readonly entries: readonly EntryId[];
}

function turbulentAtNominal(view: FlightView, sheet: FlightSheet): readonly AtNominal[] {
  const nominal = nominalSetting(sheet);
  const { probes } = probeRuns(view, sheet, settingsOf(view.state, sheet));
  return probes.map(({ probe: { panel }, runs }) => {
    const own = runs.filter(({ run }) => nominal !== null && isSameSetting(run.setting, nominal));
    return {
      panel,
      turbulent: own.length === 0 ? null : isTurbulent(own),
      entries: own.flatMap(({ run: { run }, entries }) => [run.started.by, ...entries]),
    };
  });
}

function behindHungCover(view: FlightView, atNominal: readonly AtNominal[]): Association {
  const hung = hungCovers(view);
  const seen = atNominal.filter(({ turbulent }) => turbulent !== null);
  const count = (isHung: boolean, turbulent: boolean): number =>
    seen.filter((probe) => hung.has(probe.panel) === isHung && probe.turbulent === turbulent)
      .length;
  return tested({
    question: 'turbulentBehindHungCover',
    table: [
      [count(true, true), count(true, false)],
      [count(false, true), count(false, false)],
    ],
    leftOut: { noNominalClearRun: atNominal.length - seen.length },
    entries: [...[...hung.values()].map(({ by }) => by), ...seen.flatMap(({ entries }) => entries)],
    cautions: ['probesOfOnePanelShareACause'],
  });
}

function withFinding(
  view: FlightView,
  { panels }: FlightSheet,
  atNominal: readonly AtNominal[],
): Association {
  const findings = findingsByPanel(view);
  const rows = panels.map(({ id }) => {
    const own = atNominal.filter(({ panel, turbulent }) => panel === id && turbulent !== null);
    return {
      verdict: findings.get(id)?.verdict ?? 'notInspected',
      by: findings.get(id)?.by,
      turbulent: own.length === 0 ? null : own.some(({ turbulent }) => turbulent),
      entries: own.flatMap(({ entries }) => entries),
    };
  });
  const inspected = rows.filter(({ verdict }) => verdict !== 'notInspected');
  const seen = inspected.filter(({ turbulent }) => turbulent !== null);
  const count = (verdict: 'finding' | 'clean', turbulent: boolean): number =>
    seen.filter((panel) => panel.verdict === verdict && panel.turbulent === turbulent).length;
  return tested({
    question: 'turbulentWithFinding',
    table: [
      [count('finding', true), count('finding', false)],
      [count('clean', true), count('clean', false)],
    ],
    leftOut: {
      notInspected: rows.length - inspected.length,
      noNominalClearRun: inspected.length - seen.length,
    },
    entries: distinct(seen.flatMap(({ by, entries }) => [by, ...entries])),
    cautions: [],
  });
}

function particleSize(view: FlightView, met: readonly Encounter[]): Association {
  const all = particleEncounters(view, met);
  const joined = all.flatMap(({ meanSize, firstLoss }) =>
    meanSize.kind === 'answer' && firstLoss.kind === 'answer'
      ? [
          {
            sizeM: meanSize.value.meanSizeM,
            lagS: firstLoss.value.lagS,
            entries: [...meanSize.how.entries, ...firstLoss.how.entries],
          },
        ]
      : [],
  );
  const entries = distinct(joined.flatMap((one) => one.entries));
  const leftOut = { noSizeOrNoLoss: all.length - joined.length };
  if (joined.length < FEWEST_JOINED_SAMPLES) {
    return {
      question: 'particleSizeAndLoss',
      table: null,
      leftOut: counted(leftOut),
      test: { kind: 'noAnswer', because: 'tooFewJoinedSamples', entries },
      cautions: ['associationNotCause', 'encountersFollowEachOther'],
    };
  }
  const sizeM = median(joined.map((one) => one.sizeM));
  const lagS = median(joined.map((one) => one.lagS));
  const count = (larger: boolean, sooner: boolean): number =>
    joined.filter((one) => one.sizeM > sizeM === larger && one.lagS < lagS === sooner).length;
  return tested({
    question: 'particleSizeAndLoss',
    table: [
      [count(true, true), count(true, false)],
      [count(false, true), count(false, false)],
    ],
    leftOut,
    entries,
    cautions: ['encountersFollowEachOther'],
  });
}

function tested({
  question,
  table,
  leftOut,
  entries,
  cautions,
}: {
  readonly question: Question;
  readonly table: TwoByTwo;
  readonly leftOut: Partial<Record<LeftOutBecause, number>>;
  readonly entries: readonly EntryId[];
  readonly cautions: readonly Caution[];
}): Association {
  return {
    question,
    table,
    leftOut: counted(leftOut),
    test: fisherTest(table, distinct(entries)),
    cautions: ['associationNotCause', ...cautions],
  };
}

const LEFT_OUT: readonly LeftOutBecause[] = [
  'wingsNotSeen',
  'noNominalClearRun',
  'notInspected',
  'noSizeOrNoLoss',
];

function counted(leftOut: Partial<Record<LeftOutBecause, number>>): Association['leftOut'] {
  return LEFT_OUT.flatMap((because) => {
    const count = leftOut[because] ?? 0;
    return count > 0 ? [{ because, count }] : [];
  });
}
