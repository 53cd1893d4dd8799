import { useMemo, useState } from 'react';
import {
  archivedPointsOf,
  archiveFit,
  placeOf,
  type ArchiveFit,
  type NoArchiveFit,
} from '../../../analysis/baselineArchive.ts';
import { flowIn, flowUnitOf, massUnitOf, weightIn } from '../../../analysis/sheetUnits.ts';
import { readTimeline } from '../../../file/readTimeline.ts';
import { wholeRefusalWords } from '../../../file/words.ts';
import { freeId } from '../../../record/blankSheet.ts';
import { viewOf } from '../../../record/flight.ts';
import type { ArchivedPoint, FlightSheet } from '../../../record/sheet.ts';
import { measureWords, numberWords } from '../../../record/sheetMeasure.ts';
import { FilePick } from '../../kit/FilePick.tsx';
import { GroundButton } from '../../kit/Ground.tsx';
import { Graph } from '../Graph.tsx';
import { useDraft } from '../sheet/sheetDraft.ts';
import { NOTHING } from '../sheet/useNumberText.ts';
import styles from '../Brief.module.css';

const NO_FIT_WORDS: Readonly<Record<NoArchiveFit, string>> = {
  noPoint: 'No points yet: take them from timeline files of earlier flights, or type them.',
  tooFewPoints: 'Two points at the Mach of the cards are the least for a line.',
  oneWeight: 'All points lie at one weight: they say nothing of how flow goes with weight.',
};

/** Suction-off points of earlier flights, their line with its interval, and what may be borrowed from it. */
export function ArchiveBlock() {
  const draft = useDraft();
  const { sheet } = draft;
  const { baselineArchive: points = [] } = sheet;
  const fit = useMemo(() => archiveFit(sheet), [sheet]);
  const [told, setTold] = useState<string | null>(null);
  const put = (next: readonly ArchivedPoint[]) => draft.put('baselineArchive', next, NOTHING);
  const take = async (files: readonly File[]): Promise<void> => {
    const said: string[] = [];
    let all = points;
    for (const file of files) {
      const reading = readTimeline(await file.text(), file.size);
      if (reading.kind === 'refused') {
        said.push(`${file.name}: ${wholeRefusalWords(reading.refusal)}`);
        continue;
      }
      const found = archivedPointsOf(viewOf(reading.entries), []).filter(
        (point) => !all.some((one) => one.id === point.id && one.flight === point.flight),
      );
      said.push(`${file.name}: ${found.length} new suction-off points.`);
      all = [...all, ...found];
    }
    put(all);
    setTold(said.join(' '));
  };
  return (
    <section className={styles.block} aria-label="Baseline archive">
      <h3>Archive of suction-off points</h3>
      {fit.kind === 'noFit' ? (
        <p className={styles.quiet}>{NO_FIT_WORDS[fit.because]}</p>
      ) : (
        <FittedArchive sheet={sheet} fit={fit} />
      )}
      <ul className={styles.list}>
        {points.map((point, index) => (
          <li key={index}>
            <button
              type="button"
              className={styles.listKey}
              data-act={`archive.item=${index}`}
              onClick={() => draft.openItem(index)}
            >
              <b>{point.id}</b>
              <span>{point.flight === '' ? 'no flight named' : point.flight}</span>
              <span>{`M ${numberWords(point.mach)}`}</span>
              <span>{`${measureWords(point.weightOverDelta)}, ${measureWords(point.referredFlow)}`}</span>
              <span>{point.source === 'typed' ? 'typed' : ''}</span>
            </button>
          </li>
        ))}
      </ul>
      <FilePick
        act="archive.take"
        label="Take points from timeline files"
        accept=".jsonl,.txt,.json,application/x-ndjson"
        choose="several"
        onFiles={(files) => void take(files)}
      />
      <p role="status">{told}</p>
      <GroundButton
        act="archive.add"
        onPress={() => {
          put([...points, typedPoint(sheet, points)]);
          draft.openItem(points.length);
        }}
      >
        Type a point
      </GroundButton>
    </section>
  );
}

function FittedArchive({ sheet, fit }: { sheet: FlightSheet; fit: ArchiveFit }) {
  const draft = useDraft();
  const [flowUnit, massUnit] = [flowUnitOf(sheet), massUnitOf(sheet)];
  const x = (weightN: number) => weightIn(massUnit, weightN) / 1000;
  const y = (flowKgPerS: number) => flowIn(flowUnit, flowKgPerS);
  const dot = (point: ArchivedPoint, isLeft: boolean) => {
    const { weightN, flowKgPerS } = placeOf(point);
    return weightN === null || flowKgPerS === null
      ? []
      : [{ x: x(weightN), y: y(flowKgPerS), isLeft }];
  };
  const elasticity = Number(fit.elasticity.toFixed(3));
  const doubt = Number(Math.max(0.001, fit.elasticityStandardUncertainty).toFixed(3));
  const flights = [...new Set(fit.used.map(({ flight }) => flight))].join('; ');
  const from = `archive, ${fit.used.length} points: ${flights}`.slice(0, 200);
  const { borrowedBaseline: borrowed } = sheet;
  const isBorrowed =
    borrowed?.weightElasticity === elasticity && borrowed.standardUncertainty === doubt;
  return (
    <>
      <Graph
        label="Baseline archive"
        across={`weight / pressure ratio, 1000 ${massUnit}`}
        up={`referred flow, ${flowUnit}`}
        lines={[
          {
            name: 'fit',
            points: fit.curve.map((at) => ({
              x: x(at.weightN),
              y: y(at.flowKgPerS),
              half: y(at.halfKgPerS),
            })),
          },
        ]}
        dots={[
          ...fit.used.flatMap((point) => dot(point, false)),
          ...fit.left.flatMap((point) => dot(point, true)),
        ]}
        hull={[x(fit.hullN[0]), x(fit.hullN[1])]}
      />
      <p>
        {`Line with its 95 % interval; the dashed frame is the weights that were flown${fit.left.length === 0 ? '' : '; hollow points are not fitted'}. `}
        <b>{`Share of flow for a share of weight: ${numberWords(elasticity)} ± ${numberWords(doubt)}, one sigma.`}</b>
      </p>
      <GroundButton
        act="archive.borrow"
        strong
        disabled={isBorrowed}
        onPress={() =>
          draft.put(
            'borrowedBaseline',
            { weightElasticity: elasticity, standardUncertainty: doubt, from },
            NOTHING,
          )
        }
      >
        {isBorrowed ? 'This is what is borrowed' : 'Borrow it for this flight'}
      </GroundButton>
    </>
  );
}

function typedPoint(sheet: FlightSheet, points: readonly ArchivedPoint[]): ArchivedPoint {
  return {
    id: freeId('B', points),
    flight: '',
    configuration: '',
    mach: sheet.condition.mach,
    weightOverDelta: { value: 0, unit: massUnitOf(sheet) },
    referredFlow: { value: 0, unit: flowUnitOf(sheet) },
    readings: 3,
    source: 'typed',
  };
}
