import type { FlightSheet } from './sheet.ts';
import { doubt, withinSpan, type SheetDoubt } from './sheetDoubt.ts';
import { numberWords } from './sheetMeasure.ts';

/** What suction costs and what it can save: numbers of one aircraft, so each says from whom it is. */
export function* suctionDoubts({ aircraft }: FlightSheet): Generator<SheetDoubt> {
  yield* bleedDoubts(aircraft);
  const { treatedDragShare: share } = aircraft;
  if (share === undefined) return;
  if (!(share.fraction > 0 && share.fraction < 1)) {
    yield doubt(
      'aircraft.treatedDragShare.fraction',
      `Drag share of the treated strips: ${numberWords(share.fraction)}, but a share lies between 0 and 1.`,
    );
  }
  if (share.standardUncertainty !== undefined && !(share.standardUncertainty > 0)) {
    yield doubt(
      'aircraft.treatedDragShare.standardUncertainty',
      'Drag share of the treated strips: a doubt has to be above zero.',
    );
  }
  if (share.from.trim() === '') {
    yield doubt(
      'aircraft.treatedDragShare.from',
      'Drag share of the treated strips: say from whom it is.',
    );
  }
}

/** Spans are wide guesses at any engine: common practice, no source. */
function* bleedDoubts({ bleed, suctionDrive }: FlightSheet['aircraft']): Generator<SheetDoubt> {
  if (bleed === undefined) {
    if (suctionDrive === 'bleed') {
      yield doubt(
        'aircraft.bleed',
        'No cost of bleed: the engines show what suction saves net, and the gross saving stays open.',
      );
    }
    return;
  }
  if (suctionDrive !== 'bleed') {
    yield doubt('aircraft.bleed', 'Cost of bleed is given, but bleed does not drive the suction.');
  }
  yield* withinSpan(
    'aircraft.bleed.flowFractionPerPercent',
    'Fuel flow per per cent of bleed',
    bleed.flowFractionPerPercent,
    [0.002, 0.05],
  );
  yield* withinSpan(
    'aircraft.bleed.percentTaken',
    'Bleed taken, per cent',
    bleed.percentTaken,
    [0.1, 15],
  );
  if (!(bleed.standardUncertainty > 0)) {
    yield doubt('aircraft.bleed.standardUncertainty', 'Cost of bleed: its doubt is not given yet.');
  }
  if (bleed.from.trim() === '') {
    yield doubt('aircraft.bleed.from', 'Cost of bleed: say from whom it is.');
  }
}
