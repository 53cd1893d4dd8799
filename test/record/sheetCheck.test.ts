import { describe, expect, it } from 'vitest';
import { blankSheet } from '../../src/record/blankSheet.ts';
import { checkSheet, sectionOf, SHEET_SECTIONS } from '../../src/record/sheetCheck.ts';
import { withValue, type SheetPath } from '../../src/record/sheetEdit.ts';
import type { FlightSheet } from '../../src/record/sheet.ts';
import { TILE_IDS, USUAL_TILE_PAGES } from '../../src/record/tiles.ts';
import { soundSheet } from './soundSheet.ts';

const ON = { today: '2032-06-02', tiles: TILE_IDS };
const wordsOf = (sheet: FlightSheet) => checkSheet(sheet, ON).map((one) => one.words);

function edited(path: SheetPath, value: unknown): FlightSheet {
  const sheet = withValue(soundSheet(), path, value);
  if (sheet === null) {
    throw new Error(`the record refuses ${path}`);
  }
  return sheet;
}

const row = (lbf: number, lbPerH: number): object => ({
  thrust: { value: lbf, unit: 'lbf' },
  flow: { value: lbPerH, unit: 'lb/h' },
});
const TABLE = { rows: [row(1000, 900), row(4000, 3100)] };

const m = (value: number) => ({ value, unit: 'm' });
/** 11 m × (3 + 1.2) m is 46.2 m², 497 ft². */
const PLAN = { semiSpan: m(11), rootChord: m(3), tipChord: m(1.2) };
const SIGNED = { revision: 'A', signedBy: 'P1', signedOn: '2032-05-30', changes: [] };
const [PANEL] = soundSheet().panels;
const POINT = {
  id: '1',
  flight: 'flight 3',
  configuration: 'clean',
  mach: 0.71,
  weightOverDelta: { value: 170_000, unit: 'lb' },
  referredFlow: { value: 12_000, unit: 'lb/h' },
  standardUncertainty: { value: 60, unit: 'lb/h' },
  readings: 4,
  source: 'typed',
};

const { standardUncertainty: _doubt, ...UNDOUBTED } = POINT;

const BLEED = {
  flowFractionPerPercent: 0.012,
  percentTaken: 3,
  standardUncertainty: 0.005,
  from: 'engine deck',
};

/** One bad edit a row: where, what is put there, and the sentence that has to appear. */
const BAD_EDITS: readonly (readonly [SheetPath, unknown, string])[] = [
  ['title', ' ', 'Title of the flight: not given yet.'],
  ['stopWords', undefined, 'Stop words: not briefed yet.'],
  ['localOffsetH', 25, 'Local time: 25 h from UTC, but zones run from −12 to +14 h.'],
  ['aircraft.mark', '', 'Aircraft mark: not given yet.'],
  ['aircraft.wingArea', { value: 0, unit: 'ft2' }, 'Wing area: not given yet.'],
  [
    'aircraft.wingArea',
    { value: -500, unit: 'ft2' },
    'Wing area: −500 ft², but it has to be above zero.',
  ],
  ['aircraft.wingArea', { value: 500, unit: 'lb' }, 'Wing area: lb is not an area.'],
  [
    'aircraft.wingArea',
    { value: 46_000, unit: 'ft2' },
    'Wing area: 46 000 ft² is unlikely for an aircraft; check the unit.',
  ],
  ['aircraft.liftToDragAtMost', 250, 'Greatest lift to drag: 250, usually 5 to 60.'],
  [
    'aircraft.suctionDrive',
    'bleed',
    'No cost of bleed: the engines show what suction saves net, and the gross saving stays open.',
  ],
  ['aircraft.bleed', BLEED, 'Cost of bleed is given, but bleed does not drive the suction.'],
  [
    'aircraft.bleed',
    { ...BLEED, flowFractionPerPercent: 1.2 },
    'Fuel flow per per cent of bleed: 1.2, usually 0.002 to 0.05.',
  ],
  [
    'aircraft.bleed',
    { ...BLEED, percentTaken: 40 },
    'Bleed taken, per cent: 40, usually 0.1 to 15.',
  ],
  [
    'aircraft.bleed',
    { ...BLEED, standardUncertainty: 0 },
    'Cost of bleed: its doubt is not given yet.',
  ],
  ['aircraft.bleed', { ...BLEED, from: ' ' }, 'Cost of bleed: say from whom it is.'],
  [
    'aircraft.treatedDragShare',
    { fraction: 36, from: 'polar' },
    'Drag share of the treated strips: 36, but a share lies between 0 and 1.',
  ],
  [
    'aircraft.treatedDragShare',
    { fraction: 0.36, standardUncertainty: 0, from: 'polar' },
    'Drag share of the treated strips: a doubt has to be above zero.',
  ],
  [
    'aircraft.treatedDragShare',
    { fraction: 0.36, from: '' },
    'Drag share of the treated strips: say from whom it is.',
  ],
  ['aircraft.machSensitivitySuctionOn', -1, 'Mach sensitivity, suction on: −1, usually 0 to 6.'],
  [
    'aircraft.suctionDrive',
    'bleed',
    'SU reads suction fuel, but the suction is driven by the engines.',
  ],
  ['aircraft.engineCount', 3, 'Engine 3 has no fuel-flow instrument.'],
  ['aircraft.engineCount', 1, 'FF2 reads engine 2, the aircraft has 1.'],
  [
    'engineMap.flowPerThrust',
    { value: 0.7, unit: 'lb/h' },
    'Engine map, slope: lb/h is not a fuel flow per thrust.',
  ],
  [
    'engineMap',
    undefined,
    'No engine map: fuel-flow reduction is all that can be said, and drag stays open.',
  ],
  [
    'engineTables',
    [{ ...TABLE, flowStandardUncertainty: { value: 20, unit: 'lb/h' } }],
    'Drag by engine tables and an engine map: only engine tables will be used.',
  ],
  [
    'engineTables',
    [TABLE],
    'Engine table: its doubt is not given, so drag looks surer than it is.',
  ],
  ['engineTables', [TABLE, TABLE], 'Engine table stands twice.'],
  ['engineTables', [{ ...TABLE, engine: 2 }], 'Engine 1 has no table, so the tables are not used.'],
  ['engineTables', [{ ...TABLE, engine: 3 }], 'A table is for engine 3, the aircraft has 2.'],
  [
    'engineTables',
    [{ rows: [row(1000, 900), row(2000, 900)] }],
    'Engine table: more thrust has to burn more fuel in every row, so it is not used.',
  ],
  [
    'engineTables',
    [{ rows: [row(1000, 900), { ...row(2000, 1600), thrust: { value: 9, unit: 'lb' } }] }],
    'Engine table, row 2: lb is not a force.',
  ],
  [
    'engineTables',
    [{ rows: [row(-10, 900), row(2000, 1600)] }],
    'Engine table, row 1: neither thrust nor flow is negative.',
  ],
  [
    'tsfcSlope',
    { slope: -2, standardUncertainty: 0.1, from: 'deck' },
    'Slope of consumption: −2, usually −0.6 to 0.2.',
  ],
  [
    'tsfcSlope',
    { slope: -0.1, standardUncertainty: 0, from: 'deck' },
    'Slope of consumption: its doubt is not given yet.',
  ],
  [
    'tsfcSlope',
    { slope: -0.1, standardUncertainty: 0.1, from: '' },
    'Slope of consumption: say from whom it is.',
  ],
  [
    'aircraft.polar',
    { zeroLiftDrag: 0.2, liftFactor: 0.05, from: 'flights' },
    'Zero-lift drag coefficient: 0.2, usually 0.005 to 0.06.',
  ],
  [
    'aircraft.polar',
    { zeroLiftDrag: 0.02, liftFactor: 5, from: 'flights' },
    'Lift-dependent drag factor: 5, usually 0.015 to 0.2.',
  ],
  [
    'stability',
    { windowS: 180 },
    'Window of a steady point: 180 s holds fewer than three readings, one every 300 s.',
  ],
  ['stability', { windowS: 5 }, 'Window of a steady point, s: 5, usually 60 to 1800.'],
  ['stability', { machRange: 0.5 }, 'Steady Mach, range: 0.5, usually 0.002 to 0.03.'],
  ['stability', { climb: { value: 10, unit: 'ft' } }, 'Steady height, rate: ft is not a speed.'],
  [
    'weights.ramp',
    { value: 41_000, unit: 'lb' },
    'Zero-fuel weight and ramp fuel add up to 40 000 lb, ramp weight says 41 000 lb.',
  ],
  ['weights.rampFuel', undefined, 'Ramp fuel: not given yet.'],
  [
    'weights.zeroFuel',
    { value: 13_607.77, unit: 'kg' },
    'Zero-fuel weight is in kg, this flight sheet works in lb.',
  ],
  [
    'weights.grossWeightStandardUncertainty',
    { value: 4000, unit: 'lb' },
    'Doubt of the gross weight: more than 5 % of the ramp weight.',
  ],
  ['condition.mach', 72, 'Mach of the cards: 72, usually 0.15 to 0.95.'],
  [
    'condition.pressureAltitude',
    { value: 360, unit: 'ft' },
    'Height of the cards: 360 ft is unlikely for a cruise card; a flight level is in hundreds of feet.',
  ],
  ['tolerances.machRatePerMin', 0, 'Mach rate tolerance: not given, so no reading would pass.'],
  ['tolerances.climb', { value: 50, unit: 'ft' }, 'Height rate tolerance: ft is not a speed.'],
  ['timeDoubts.lateS', 0, 'Doubt of a late entry: 0, usually 1 to 600.'],
  ['targetReductionFraction', 29, 'Target: 2900 %, but a target lies between 0 and 70 %.'],
  ['borrowedBaseline.from', '', 'Borrowed baseline: say which flights it is from.'],
  [
    'borrowedBaseline.standardUncertainty',
    0,
    'Borrowed weight elasticity: its doubt is not given yet.',
  ],
  ['panels.1.id', 'L1', 'Panel L1 stands twice.'],
  ['panels.0.wing', 'R', 'Panel L1 stands on the right wing.'],
  ['panels.1.spanFromFraction', 0.3, 'Panels L1 and L2 overlap from 30 % to 37 % of the span.'],
  ['panels.1.spanToFraction', 0.2, 'Panel L2: ends at 20 % of the span, but it begins at 37 %.'],
  [
    'panels.0.area',
    { value: 40, unit: 'ft2' },
    'Left wing panels add up to 100 ft², right wing panels to 90 ft².',
  ],
  [
    'panels.0.area',
    { value: 40, unit: 'ft2' },
    'Probes of panel L1 stand for 30 ft², the panel has 40 ft².',
  ],
  [
    'aircraft.wingArea',
    { value: 150, unit: 'ft2' },
    'The panels add up to 180 ft², the aircraft says 150 ft².',
  ],
  ['probes.0.panel', 'L9', 'Probe L01: panel L9 is not on this flight sheet.'],
  ['probes.0.wing', 'R', 'Probe L01 is on the right wing, its panel L1 on the left one.'],
  ['probes.1.id', 'L01', 'Probe L01 stands twice.'],
  ['probes.2.area', { value: 0, unit: 'ft2' }, 'Probe L03, area: not given yet.'],
  ['instruments.0.consumer', undefined, 'FF1: say which engine it reads.'],
  ['instruments.1.id', 'FF1', 'Instrument FF1 stands twice.'],
  ['instruments.1.consumer', 1, 'FF1 and FF2 both read the fuel flow of engine 1.'],
  ['instruments.0.unit', 'kg', 'FF1: kg is a mass; fuel flow is read in lb/h or kg/h.'],
  ['instruments.0.resolution', 0, 'FF1: display step not given yet.'],
  ['instruments.0.resolution', 0.5, 'FF1: a step of 0.5 does not show in 0 decimals.'],
  ['instruments.0.rangeHigh', 12_000, 'FF1: 12 000 does not fit 4 boxes.'],
  ['instruments.0.rangeLow', -50, 'FF1: range goes below zero, but the pad offers no sign.'],
  ['instruments.0.repeatability', -5, 'FF1: repeatability −5 is negative.'],
  ['instruments.0.serviceable', false, 'FF1 is unserviceable, so engine 1 has no fuel flow.'],
  ['instruments.0.calibration.dueOn', undefined, 'FF1: calibration due date is missing.'],
  ['instruments.0.calibration.dueOn', '2032-05-31', 'FF1: calibration fell due on 2032-05-31.'],
  [
    'instruments.0.calibration.dueOn',
    '2032-02-30',
    'FF1: calibration due 2032-02-30 is not a date, YYYY-MM-DD.',
  ],
  [
    'instruments.0.calibration.residualStandardUncertainty',
    undefined,
    'FF1: doubt left after calibration is not given, so the interval is too narrow.',
  ],
  [
    'instruments.0.calibration.points',
    [
      { reading: 500, correction: 4 },
      { reading: 500, correction: 6 },
    ],
    'FF1: calibration row 2 reads 500, not above the row before.',
  ],
  [
    'instruments.0.calibration.points',
    [{ reading: 500, correction: 4 }],
    'FF1: a calibration table of one row is not used; give two or the single correction.',
  ],
  ['instruments.6.quantity', 'staticAirTemp', 'No Mach instrument: fuel flow cannot be referred.'],
  ['testCards.1.order', 1, 'Test cards TP01 and TP02 both stand at place 1.'],
  [
    'testCards.1.minimumReadings',
    1,
    'Test card TP02 asks for 1 readings; a run wants three or more.',
  ],
  ['testCards.0.suction', 'on', 'One baseline card only: two weights are wanted, heavy and light.'],
  [
    'testCards.0.expectedFuel',
    { value: 20_000, unit: 'lb' },
    'The test cards expect 20 000 lb, ramp fuel is 10 000 lb.',
  ],
  ['people.0.role', 'observer', 'Nobody on this flight sheet is scribe.'],
  [
    'clocks.0.scale',
    'unknown',
    'Clock master: ask whether it shows UTC or satellite time; the two differ by whole seconds.',
  ],
  ['limits.joker', { value: 2000, unit: 'lb' }, 'Joker 2000 lb is not above bingo 3000 lb.'],
  ['limits.bingo', undefined, 'Bingo: not given yet.'],
  ['limits.readingEveryS', 5, 'Seconds between fuel readings: 5, usually 30 to 3600.'],
  ['tilePages.cruise.1', 'point', 'Cruise page: tile point stands twice.'],
  ['tilePages.cruise.1', 'kettle', 'Cruise page: no tile is called kettle.'],
  [
    'tileWords',
    [{ tile: 'kettle', label: 'Tea' }],
    'Word \u201cTea\u201d: no tile is called kettle.',
  ],
  ['tileWords', [{ tile: 'cloud', label: ' ' }], 'Tile cloud: its own word is empty.'],
  [
    'tileWords',
    [{ tile: 'cloud', label: 'Anti-ice' }],
    'Tile \u201cAnti-ice\u201d has 8 letters, a tile shows 7.',
  ],
  ['revision', 'B', 'Revision B: nobody has signed it.'],
  ['revisions.0.signedBy', ' ', 'Revision A: say who signed it.'],
  ['revisions.0.signedOn', '30 May', 'Revision A: signed on 30 May is not a date, YYYY-MM-DD.'],
  [
    'revisions',
    [SIGNED, SIGNED],
    'Revision A is signed twice: give the later one a name of its own.',
  ],
  ['aircraft.planform', { ...PLAN, semiSpan: m(0) }, 'Half span of the wing: not given yet.'],
  [
    'aircraft.planform',
    { ...PLAN, rootChord: { value: 3, unit: 'kg' } },
    'Root chord: kg is not a height.',
  ],
  [
    'aircraft.planform',
    { ...PLAN, tipChord: m(4) },
    'Tip chord 4 m is longer than root chord 3 m.',
  ],
  [
    'aircraft.planform',
    { ...PLAN, leadingEdgeSweepDeg: 280 },
    'Sweep of the leading edge, degrees: 280, usually \u221245 to 70.',
  ],
  [
    'aircraft.planform',
    { ...PLAN, semiSpan: m(30) },
    'Span and chords make a wing of 1356.3 ft², the aircraft says 500 ft².',
  ],
  [
    'panels.0.chordToFraction',
    60,
    'Panel L1: ends at 6000 % of the chord, but a chord runs from 0 to 100 %.',
  ],
  [
    'panels.0',
    { ...PANEL, chordFromFraction: 0.5, chordToFraction: 0.2 },
    'Panel L1: ends at 20 % of the chord, but it begins at 50 %.',
  ],
  [
    'instruments.0.plausibleRatePerMin',
    0,
    'FF1: plausible rate 0 a minute, but it has to be above zero.',
  ],
  [
    'instruments.0.calibration.calibratedOn',
    '2033-01-01',
    'FF1: calibrated on 2033-01-01, which is still to come.',
  ],
  [
    'instruments.0.calibration.calibratedOn',
    '2032-12-01',
    'FF1: calibration due 2032-12-01, not after 2032-12-01 when it was done.',
  ],
  [
    'instruments.0.calibration.asLeft',
    [{ reading: 500, correction: 4 }],
    'FF1: an as-left table of one row is not used; give two or the single correction.',
  ],
  [
    'instruments.0.calibration.asLeft',
    [
      { reading: 500, correction: 4 },
      { reading: 400, correction: 6 },
    ],
    'FF1: as-left row 2 reads 400, not above the row before.',
  ],
  [
    'instruments.0.calibration.asLeft',
    [
      { reading: 400, correction: 4 },
      { reading: 500, correction: 6 },
    ],
    'FF1: left corrected by a table, but nothing says how it was found.',
  ],
  ['testCards.0.priority', 0, 'Test card TP01: priority 0, but priorities count from 1.'],
  [
    'testCards.0.minimumSteadyS',
    60,
    'Test card TP01: 3 readings, one every 300 s, take 600 s; it asks for 60 s steady.',
  ],
  [
    'testCards.0.expectedFuel',
    { value: 7000, unit: 'lb' },
    'The test cards leave 3000 lb of ramp fuel, joker is 4000 lb.',
  ],
  ['baselineArchive', [{ ...POINT, flight: '' }], 'Archived point 1: say which flight.'],
  [
    'baselineArchive',
    [{ ...POINT, mach: 7.1 }],
    'Archived point 1, Mach: 7.1, usually 0.15 to 0.95.',
  ],
  [
    'baselineArchive',
    [{ ...POINT, weightOverDelta: { value: 170_000, unit: 'lb/h' } }],
    'Archived point 1, weight over pressure ratio: lb/h is not a mass.',
  ],
  [
    'baselineArchive',
    [{ ...POINT, referredFlow: { value: 0, unit: 'lb/h' } }],
    'Archived point 1, flow: not given yet.',
  ],
  ['baselineArchive', [UNDOUBTED], 'Archived point 1: doubt of its flow is not given.'],
  ['baselineArchive', [POINT, POINT], 'Archived point 1 stands twice.'],
  [
    'baselineArchive',
    [POINT, { ...POINT, id: '2', mach: 0.74 }],
    '1 of 2 archived points lies more than 0.005 from the Mach of the cards and is not fitted.',
  ],
  [
    'baselineArchive',
    [POINT, { ...POINT, id: '2', referredFlow: { value: 30_000, unit: 'lb/h' } }],
    'Archived flows differ by more than a factor of two: check units and how many engines they count.',
  ],
];

describe('a flight sheet', () => {
  it('has nothing doubtful about it when all is given and agrees', () => {
    expect(wordsOf(soundSheet())).toEqual([]);
  });

  it.each(BAD_EDITS)('with %s made %o says so', (path, value, sentence) => {
    const plain = wordsOf(edited(path, value)).map((words) => words.replaceAll('\u00a0', ' '));
    expect(plain).toContain(sentence);
  });

  it.each(BAD_EDITS)('keeps what was put at %s as it was put', (path, value) => {
    const sheet = edited(path, value);
    checkSheet(sheet, ON);
    expect(sheet).toEqual(edited(path, value));
  });

  it('says of a blank one what is missing, page by page', () => {
    const blank = blankSheet({
      id: 'blank',
      massUnit: 'kg',
      heightUnit: 'm',
      tilePages: USUAL_TILE_PAGES,
    });
    const doubts = checkSheet(blank, ON);
    const pages = doubts.map((one) => SHEET_SECTIONS.indexOf(sectionOf(one.path)));
    expect(pages).toEqual(pages.toSorted((a, b) => a - b));
    expect(doubts.map((one) => one.words)).toEqual(
      expect.arrayContaining([
        'Aircraft mark: not given yet.',
        'Ramp weight: not given yet.',
        'No panels yet: the wing map stays empty.',
        'Engine 2 has no fuel-flow instrument.',
        'No test cards yet.',
      ]),
    );
  });

  it('leaves due dates unjudged while today is not known', () => {
    const sheet = edited('instruments.0.calibration.dueOn', '2032-05-31');
    expect(checkSheet(sheet, { today: null, tiles: TILE_IDS })).toEqual([]);
  });
});

describe('an edit by path', () => {
  it('changes that field and no other', () => {
    const sheet = edited('instruments.2.calibration.correction', -20);
    expect(sheet.instruments[2]?.calibration.correction).toBe(-20);
    expect(withValue(sheet, 'instruments.2.calibration.correction', 0)).toEqual(soundSheet());
  });

  it('takes a row away when it is given nothing', () => {
    expect(edited('testCards.1', undefined).testCards.map((card) => card.id)).toEqual([
      'TP01',
      'TP03',
    ]);
  });

  it('is refused when the record would not take the sheet', () => {
    expect(withValue(soundSheet(), 'instruments.0.id', '')).toBeNull();
    expect(withValue(soundSheet(), 'aircraft.engineCount', 9)).toBeNull();
  });
});
