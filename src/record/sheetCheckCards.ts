import type { Measure } from './measure.ts';
import { FLIGHT_PHASES, type FlightPhase, type FlightSheet } from './sheet.ts';
import { doubledIds, doubt, positiveMeasure, withinSpan, type SheetDoubt } from './sheetDoubt.ts';
import type { SheetPath } from './sheetEdit.ts';
import { dimensionOf, inBase, measureWords } from './sheetMeasure.ts';

const PHASE_WORDS: Readonly<Record<FlightPhase, string>> = {
  ground: 'Ground',
  climb: 'Climb',
  cruise: 'Cruise',
  descent: 'Descent',
};
const TILES_A_PAGE = 12;
const LETTERS_A_TILE = 7;

export function* cardDoubts(
  sheet: FlightSheet,
  tiles: readonly string[] | null,
): Generator<SheetDoubt> {
  yield* testCardDoubts(sheet);
  yield* peopleDoubts(sheet);
  yield* clockDoubts(sheet);
  yield* limitDoubts(sheet);
  yield* tileDoubts(sheet, tiles);
}

function* testCardDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  const cards = sheet.testCards;
  if (cards.length === 0) {
    yield doubt('testCards', 'No test cards yet.');
  }
  yield* doubledIds('testCards', 'Test card', cards);
  const places = new Map<number, string>();
  for (const [index, card] of cards.entries()) {
    const there = places.get(card.order);
    if (there === undefined) {
      places.set(card.order, card.id);
    } else {
      yield doubt(
        `testCards.${index}.order`,
        `Test cards ${there} and ${card.id} both stand at place ${card.order}.`,
      );
    }
    if (card.title.trim() === '') {
      yield doubt(`testCards.${index}.title`, `Test card ${card.id}: no title yet.`);
    }
    if (card.setting.trim() === '') {
      yield doubt(`testCards.${index}.setting`, `Test card ${card.id}: no suction setting yet.`);
    }
    if (card.minimumReadings < 3) {
      yield doubt(
        `testCards.${index}.minimumReadings`,
        `Test card ${card.id} asks for ${card.minimumReadings} readings; a run wants three or more.`,
      );
    }
    if (card.priority < 1) {
      yield doubt(
        `testCards.${index}.priority`,
        `Test card ${card.id}: priority ${card.priority}, but priorities count from 1.`,
      );
    }
    const spreadS = (card.minimumReadings - 1) * sheet.limits.readingEveryS;
    if (card.minimumSteadyS !== undefined && card.minimumSteadyS < spreadS) {
      yield doubt(
        `testCards.${index}.minimumSteadyS`,
        `Test card ${card.id}: ${card.minimumReadings} readings, one every ${sheet.limits.readingEveryS} s, take ${spreadS} s; it asks for ${card.minimumSteadyS} s steady.`,
      );
    }
    if (card.expectedFuel !== undefined) {
      yield* positiveMeasure(
        `testCards.${index}.expectedFuel`,
        `Test card ${card.id}, expected fuel`,
        card.expectedFuel,
        'mass',
      );
    }
  }
  yield* planDoubts(sheet);
}

function* planDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  const { testCards: cards, weights } = sheet;
  const baselines = cards.filter((card) => card.suction === 'off').length;
  if (cards.length > 0 && baselines === 0) {
    yield doubt('testCards', 'No test card with suction off: no baseline, no reduction.');
  }
  if (baselines === 1) {
    yield doubt('testCards', 'One baseline card only: two weights are wanted, heavy and light.');
  }
  const expected = cards.reduce(
    (sum, card) => sum + (card.expectedFuel === undefined ? 0 : (inBase(card.expectedFuel) ?? 0)),
    0,
  );
  const onBoard = weights.rampFuel === undefined ? null : inBase(weights.rampFuel);
  const joker = sheet.limits.joker === undefined ? null : inBase(sheet.limits.joker);
  if (
    sheet.limits.joker !== undefined &&
    joker !== null &&
    joker > 0 &&
    onBoard !== null &&
    expected <= onBoard &&
    expected > onBoard - joker
  ) {
    const left = Math.round(((onBoard - expected) / joker) * sheet.limits.joker.value);
    yield doubt(
      'testCards',
      `The test cards leave ${measureWords({ value: left, unit: sheet.limits.joker.unit })} of ramp fuel, joker is ${measureWords(sheet.limits.joker)}.`,
    );
  }
  if (weights.rampFuel !== undefined && onBoard !== null && onBoard > 0 && expected > onBoard) {
    const value = Math.round((expected / onBoard) * weights.rampFuel.value);
    yield doubt(
      'testCards',
      `The test cards expect ${measureWords({ value, unit: weights.rampFuel.unit })}, ramp fuel is ${measureWords(weights.rampFuel)}.`,
    );
  }
}

function* peopleDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  yield* doubledIds('people', 'Person', sheet.people);
  for (const [index, person] of sheet.people.entries()) {
    if (person.role.trim() === '') {
      yield doubt(`people.${index}.role`, `${person.id}: no role yet.`);
    }
  }
  if (!sheet.people.some((person) => person.role.toLowerCase().includes('scribe'))) {
    yield doubt('people', 'Nobody on this flight sheet is scribe.');
  }
}

function* clockDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  yield* doubledIds('clocks', 'Clock', sheet.clocks);
  if (sheet.clocks.length === 0) {
    yield doubt('clocks', 'No clocks: a time hack has nothing to tie.');
  }
  for (const [index, clock] of sheet.clocks.entries()) {
    if (clock.scale === 'unknown') {
      yield doubt(
        `clocks.${index}.scale`,
        `Clock ${clock.id}: ask whether it shows UTC or satellite time; the two differ by whole seconds.`,
      );
    }
    if (!(clock.resolutionS > 0)) {
      yield doubt(`clocks.${index}.resolutionS`, `Clock ${clock.id}: smallest step not given yet.`);
    }
  }
}

function* limitDoubts(sheet: FlightSheet): Generator<SheetDoubt> {
  const { joker, bingo, readingEveryS, samplerPlannedS, coversAfterGearUpS } = sheet.limits;
  yield* fuelLimit(sheet, 'limits.joker', 'Joker', joker);
  yield* fuelLimit(sheet, 'limits.bingo', 'Bingo', bingo);
  const jokerKg = joker === undefined ? null : inBase(joker);
  const bingoKg = bingo === undefined ? null : inBase(bingo);
  if (joker !== undefined && bingo !== undefined && jokerKg !== null && bingoKg !== null) {
    if (jokerKg <= bingoKg) {
      yield doubt(
        'limits.joker',
        `Joker ${measureWords(joker)} is not above bingo ${measureWords(bingo)}.`,
      );
    }
  }
  yield* withinSpan(
    'limits.readingEveryS',
    'Seconds between fuel readings',
    readingEveryS,
    [30, 3600],
  );
  yield* withinSpan(
    'limits.samplerPlannedS',
    'Seconds of a sampler exposure',
    samplerPlannedS,
    [5, 7200],
  );
  yield* withinSpan(
    'limits.coversAfterGearUpS',
    'Seconds from gear up to covers',
    coversAfterGearUpS,
    [10, 1800],
  );
  yield* reminderDoubts(sheet.limits.reminders ?? {});
}

/** A reminder that repeats without a pause would be a nuisance; one that never speaks is no reminder. */
function* reminderDoubts(
  limits: NonNullable<FlightSheet['limits']['reminders']>,
): Generator<SheetDoubt> {
  const spans = [
    ['readingOverdueS', 'Seconds until a reading is overdue', [10, 3600]],
    ['coversRepeatS', 'Seconds until covers are asked for again', [60, 3600]],
    ['coversAtMost', 'Times that covers are asked for', [1, 10]],
    ['samplerRepeatS', 'Seconds until a sampler is asked for again', [60, 7200]],
    ['samplerAtMost', 'Times that a sampler is asked for', [1, 10]],
    ['usualLengths', 'Usual lengths of a long interval', [1, 20]],
    ['intervalRepeatS', 'Seconds until an interval is asked for again', [60, 7200]],
    ['intervalAtMost', 'Times that an interval is asked for', [1, 10]],
    ['afterTouchS', 'Seconds of silence after a touch', [0, 120]],
    ['apartS', 'Seconds between two reminders', [10, 1800]],
    ['quietAfterGearUpS', 'Seconds of silence after gear up', [0, 1800]],
    ['quietForS', 'Seconds of quiet on request', [60, 7200]],
  ] as const;
  for (const [field, words, span] of spans) {
    const given = limits[field];
    if (given !== undefined) yield* withinSpan(`limits.reminders.${field}`, words, given, span);
  }
}

function* fuelLimit(
  sheet: FlightSheet,
  path: 'limits.joker' | 'limits.bingo',
  name: string,
  limit: Measure | undefined,
): Generator<SheetDoubt> {
  if (limit === undefined) {
    yield doubt(path, `${name}: not given yet.`);
    return;
  }
  yield* positiveMeasure(path, name, limit, 'mass');
  if (limit.unit !== sheet.massUnit && dimensionOf(limit.unit) === 'mass') {
    yield doubt(path, `${name} is in ${limit.unit}, this flight sheet works in ${sheet.massUnit}.`);
  }
  const fuel = sheet.weights.rampFuel;
  const onBoard = fuel === undefined ? null : inBase(fuel);
  const kilograms = inBase(limit);
  if (fuel !== undefined && onBoard !== null && kilograms !== null && kilograms >= onBoard) {
    yield doubt(
      path,
      `${name} ${measureWords(limit)} is not below ramp fuel ${measureWords(fuel)}.`,
    );
  }
}

function* tileDoubts(sheet: FlightSheet, tiles: readonly string[] | null): Generator<SheetDoubt> {
  yield* doubledIds('ownTiles', 'Own tile', sheet.ownTiles);
  for (const [index, tile] of sheet.ownTiles.entries()) {
    if (tile.label.trim() === '') {
      yield doubt(`ownTiles.${index}.label`, `Own tile ${tile.id}: no name yet.`);
    }
    yield* longWord(`ownTiles.${index}.label`, tile.label);
  }
  const own = new Set(sheet.ownTiles.map((tile) => tile.id));
  for (const [index, { tile, label }] of (sheet.tileWords ?? []).entries()) {
    if (tiles !== null && !tiles.includes(tile)) {
      yield doubt(
        `tileWords.${index}.tile`,
        `Word \u201c${label}\u201d: no tile is called ${tile}.`,
      );
    }
    if (label.trim() === '') {
      yield doubt(`tileWords.${index}.label`, `Tile ${tile}: its own word is empty.`);
    }
    yield* longWord(`tileWords.${index}.label`, label);
  }
  for (const phase of FLIGHT_PHASES) {
    const page = sheet.tilePages[phase];
    if (page.length > TILES_A_PAGE) {
      yield doubt(
        `tilePages.${phase}`,
        `${PHASE_WORDS[phase]} page: ${page.length} tiles, but a page takes ${TILES_A_PAGE}.`,
      );
    }
    const seen = new Set<string>();
    for (const [index, tile] of page.entries()) {
      if (tile === null) {
        continue;
      }
      if (seen.has(tile)) {
        yield doubt(
          `tilePages.${phase}.${index}`,
          `${PHASE_WORDS[phase]} page: tile ${tile} stands twice.`,
        );
      }
      seen.add(tile);
      if (tiles !== null && !tiles.includes(tile) && !own.has(tile)) {
        yield doubt(
          `tilePages.${phase}.${index}`,
          `${PHASE_WORDS[phase]} page: no tile is called ${tile}.`,
        );
      }
    }
    if (page.every((tile) => tile === null)) {
      yield doubt(`tilePages.${phase}`, `${PHASE_WORDS[phase]} page: no tiles on it.`);
    }
  }
}

function* longWord(path: SheetPath, label: string): Generator<SheetDoubt> {
  if (label.length > LETTERS_A_TILE) {
    yield doubt(
      path,
      `Tile \u201c${label}\u201d has ${label.length} letters, a tile shows ${LETTERS_A_TILE}.`,
    );
  }
}
