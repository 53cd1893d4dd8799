import { describe, expect, it } from 'vitest';
import { suctionSpans } from '../../../src/analysis/fuel/spans.ts';
import type { SpanSaving, SuctionSpan } from '../../../src/analysis/fuel/spanResults.ts';
import type { FlightSheet } from '../../../src/record/sheet.ts';
import { answerOf, reasonOf } from '../encounters/reading.ts';
import {
  atS,
  changed,
  countersAt,
  flightOf,
  fuelRead,
  OFF_S,
  ON_S,
  POUND_KG,
  runLines,
  say,
  STAGES,
  steadyLines,
  steadySheet,
  unread,
  type Line,
} from './steadyFlight.ts';

/*
 * The steady flight burns 2400 lb/h without suction at any weight and 1800 lb/h with it, so that an hour of suction is
 * 2400 lb turbulent, 1800 lb counted and 600 lb saved; its unit takes 80 lb/h of them.
 */
const COUNTERS = ['FU1', 'FU2', 'FUS'];

function spansOf(lines: readonly Line[], sheet?: FlightSheet): readonly SuctionSpan[] {
  return suctionSpans(flightOf(lines, sheet));
}

function onlySpan(lines: readonly Line[], sheet?: FlightSheet): SuctionSpan {
  const [span, ...others] = spansOf(lines, sheet);
  if (span === undefined || others.length > 0) throw new Error('there must be one span');
  return span;
}

function brokenIn(span: SuctionSpan): readonly string[] {
  if (span.saving.kind === 'noAnswer') throw new Error(`no numbers: ${span.saving.because}`);
  return span.saving.how.broken;
}

function lbOf(figure: SpanSaving['gross'] | SpanSaving['net']): number {
  if ('because' in figure) throw new Error(`no figure: ${figure.because}`);
  return figure.kg / POUND_KG;
}

function doubtLbOf(figure: SpanSaving['gross'] | SpanSaving['net']): number {
  if ('because' in figure) throw new Error(`no figure: ${figure.because}`);
  return figure.standardUncertaintyKg / POUND_KG;
}

function without(
  kinds: readonly string[],
  lines: readonly Line[] = steadyLines(),
): readonly Line[] {
  return changed(lines, (line) => (kinds.includes(line.kind) ? null : line));
}

/** The steady flight less everything between these seconds. */
function withoutTime(fromS: number, toS: number): readonly Line[] {
  return changed(steadyLines(), (line) => (line.atS >= fromS && line.atS <= toS ? null : line));
}

describe('an hour of suction', () => {
  const span = onlySpan(steadyLines());
  const saving = answerOf(span.saving);

  it('saves 600 lb gross and 520 lb net of 2400 lb', () => {
    expect(span).toMatchObject({ from: atS(ON_S), to: atS(OFF_S), wings: ['L', 'R'] });
    expect(saving.turbulent.kg / POUND_KG).toBeCloseTo(2400, 6);
    expect(saving.countedKg / POUND_KG).toBeCloseTo(1800, 6);
    expect(lbOf(saving.gross)).toBeCloseTo(600, 6);
    expect((saving.suctionKg ?? 0) / POUND_KG).toBeCloseTo(80, 6);
    expect(lbOf(saving.net)).toBeCloseTo(520, 6);
    expect('fraction' in saving.gross && saving.gross.fraction).toBeCloseTo(0.25, 9);
    expect('fraction' in saving.net && saving.net.fraction).toBeCloseTo(520 / 2400, 9);
  });

  it('doubts by source what a reader can add up', () => {
    const { calibration, counters, times } = saving.uncertaintyPartsKg;
    // Two gauges left with 6 lb/h each, for an hour.
    expect(calibration / POUND_KG).toBeCloseTo(Math.hypot(6, 6), 3);
    // Two counters with a last digit of 1 lb, at both ends.
    expect(counters / POUND_KG).toBeCloseTo(Math.sqrt(4 / 12), 6);
    // A touch good to 2 s at both ends, at 2400 lb/h.
    expect(times / POUND_KG).toBeCloseTo((Math.SQRT2 * 2 * 2400) / 3600, 6);
    const whole = Math.hypot(...Object.values(saving.uncertaintyPartsKg));
    expect(
      'standardUncertaintyKg' in saving.gross && saving.gross.standardUncertaintyKg,
    ).toBeCloseTo(whole, 9);
  });

  it('is the same on a hot day: flows are referred and brought back', () => {
    const hot = changed(steadyLines(), (line) => ({
      ...line,
      body: {
        ...line.body,
        ...(line.body?.readings && {
          readings: line.body.readings.map((row) =>
            row.instrument === 'SAT' ? { ...row, value: -46.5 } : row,
          ),
        }),
      },
    }));
    const { turbulent } = answerOf(onlySpan(hot).saving);
    expect(turbulent.kg / POUND_KG).toBeCloseTo(2400, 3);
  });
});

describe('counters not read when suction came on', () => {
  const lines = changed(steadyLines(), (line) =>
    line.kind === 'suctionTurnedOn' ? unread(line, ...COUNTERS) : line,
  );
  const saving = answerOf(onlySpan(lines).saving);

  it('stand on the line between the looks about it', () => {
    expect(saving.countersAtOn).toBe('interpolated');
    expect(saving.countersAtOff).toBe('read');
    // Looks at 2100 and 3660 s: the line misses the bend at 3000 s by 300 lb/h x 900 x 660 / 1560 s, each engine.
    const missedLb = (2 * (300 / 3600) * 900 * 660) / 1560;
    expect(saving.countedKg / POUND_KG).toBeCloseTo(1800 + missedLb, 6);
    expect(saving.uncertaintyPartsKg.counters / POUND_KG).toBeCloseTo(
      Math.hypot(
        missedLb / Math.sqrt(3),
        // Both ends of the line share the last digit; the other end was read.
        Math.sqrt((2 * ((660 / 1560) ** 2 + (900 / 1560) ** 2)) / 12),
        Math.sqrt(2 / 12),
      ),
      3,
    );
  });

  it('have the truth in the interval of what is saved', () => {
    if ('because' in saving.gross) throw new Error('gross must be given');
    const { low, high } = saving.gross.interval95;
    expect(low / POUND_KG).toBeLessThan(600);
    expect(high / POUND_KG).toBeGreaterThan(600);
  });

  it('are struck where the looks are over half an hour apart', () => {
    const far = changed(lines, (line) =>
      line.atS > 1900 && line.atS < 4800 ? unread(line, ...COUNTERS) : line,
    );
    expect(brokenIn(onlySpan(far))).toEqual(['countersFarApart']);
  });
});

describe('suction more than once', () => {
  const twice = [
    ...steadyLines(),
    say(4900, 'suctionTurnedOff', { wing: 'both', readings: countersAt(STAGES, 4900) }),
    say(5000, 'suctionTurnedOn', { wing: 'both', readings: countersAt(STAGES, 5000) }),
  ];

  it('gives each stretch its own numbers', () => {
    const spans = spansOf(twice);
    expect(spans.map(({ from, to }) => [from, to])).toEqual([
      [atS(ON_S), atS(4900)],
      [atS(5000), atS(OFF_S)],
    ]);
    // 600 lb/h saved for 1900 s and for 1600 s.
    expect(spans.map(({ saving }) => lbOf(answerOf(saving).gross))).toEqual([
      expect.closeTo(600 * (1900 / 3600), 6),
      expect.closeTo(600 * (1600 / 3600), 6),
    ]);
  });

  it('takes no notice of one that was withdrawn', () => {
    // A wrong touch and its undo leave the flight as it was.
    const lines = [...steadyLines(), say(4900, 'suctionTurnedOff', { wing: 'both' })];
    const entries = flightOf(lines).standing.map(({ entry }) => entry);
    const off = entries.find(({ kind, wall }) => kind === 'suctionTurnedOff' && wall === atS(4900));
    const undone = [
      ...lines,
      say(4905, 'entryWithdrawn', { target: off?.id ?? '', reason: 'wrong button' }),
    ];
    const span = onlySpan(undone);
    expect(lbOf(answerOf(span.saving).gross)).toBeCloseTo(600, 6);
  });
});

describe('suction wing by wing', () => {
  it('says which wing, and for how long each', () => {
    const lines = [
      ...without(['suctionTurnedOn', 'suctionTurnedOff']),
      say(ON_S, 'suctionTurnedOn', { wing: 'L', readings: countersAt(STAGES, ON_S) }),
      say(4200, 'suctionTurnedOn', { wing: 'R' }),
      say(5400, 'suctionTurnedOff', { wing: 'R' }),
      say(OFF_S, 'suctionTurnedOff', { wing: 'L', readings: countersAt(STAGES, OFF_S) }),
    ];
    const span = onlySpan(lines);
    expect(span.wings).toEqual(['L', 'R']);
    expect(span.wingSeconds).toEqual({ L: 3600, R: 1200 });
    expect(lbOf(answerOf(span.saving).gross)).toBeCloseTo(600, 6);
  });

  it('names one wing where only one had it', () => {
    const lines = changed(steadyLines(), (line) =>
      line.kind.startsWith('suctionTurned') ? { ...line, body: { ...line.body, wing: 'R' } } : line,
    );
    expect(onlySpan(lines)).toMatchObject({ wings: ['R'], wingSeconds: { L: 0, R: 3600 } });
  });
});

describe('suction that nobody turned off', () => {
  const open = onlySpan([
    ...without(['suctionTurnedOff']),
    say(400_000, 'labResultReceived', { sample: 'S-01' }),
  ]);

  it('ends at the last counters of level flight, and says so', () => {
    expect(open.to).toBe(atS(7500));
    // With suction on all the time the last run is no baseline either.
    expect(brokenIn(open)).toEqual(['oneBaselineRun', 'notTurnedOff']);
    const saving = answerOf(open.saving);
    // 1800 lb in the hour, then 2400 lb/h for a quarter of an hour.
    expect(saving.countedKg / POUND_KG).toBeCloseTo(1800 + 600, 6);
  });

  it('has no time at all without counters after it came on', () => {
    const none = changed(without(['suctionTurnedOff']), (line) =>
      line.atS > ON_S ? unread(line, ...COUNTERS) : line,
    );
    expect(reasonOf(onlySpan(none).saving)).toBe('noTime');
  });
});

describe('the baseline of a span', () => {
  it('must be there', () => {
    const none = changed(steadyLines(), (line) =>
      line.kind === 'fuelRead' && (line.atS < ON_S || line.atS > OFF_S) ? null : line,
    );
    expect(reasonOf(onlySpan(none).saving)).toBe('noBaseline');
  });

  it('is struck from one run when nothing says how flow goes with weight', () => {
    const span = onlySpan(withoutTime(7200, 7560));
    expect(brokenIn(span)).toEqual(['oneBaselineRun']);
    expect(answerOf(span.saving).provisional).toContain('noBorrowedElasticity');
  });

  it('stands on one run with an elasticity borrowed, and says borrowed', () => {
    const borrowedBaseline = { weightElasticity: 0.5, standardUncertainty: 0.05, from: 'flight 3' };
    const span = onlySpan(withoutTime(7200, 7560), steadySheet({ borrowedBaseline }));
    expect(brokenIn(span)).toEqual([]);
    const { borrowedFrom, provisional } = answerOf(span.saving);
    expect(borrowedFrom).toBe('flight 3');
    expect(provisional).toContain('borrowedElasticity');
  });

  it('is struck where the span is lighter than every run of it', () => {
    const lines = [...withoutTime(7200, 7560), ...runLines(STAGES, 'TP03', 2300)];
    expect(brokenIn(onlySpan(lines))).toEqual(['outsideBaseline']);
  });
});

describe('suction driven by the engines', () => {
  const driven = (aircraft: Partial<FlightSheet['aircraft']>): FlightSheet => {
    const sheet = steadySheet();
    return { ...sheet, aircraft: { ...sheet.aircraft, ...aircraft } };
  };

  it.each([
    ['bleed', 'bleedDriven'],
    ['shaft', 'shaftDriven'],
  ] as const)('by %s shows net alone: gross cannot be told', (suctionDrive, because) => {
    const saving = answerOf(onlySpan(steadyLines(), driven({ suctionDrive })).saving);
    expect(saving.gross).toEqual({ because });
    expect(lbOf(saving.net)).toBeCloseTo(600, 6);
    expect(saving.suctionKg).toBeNull();
  });

  it('shows gross with its doubt where the cost of bleed is stated', () => {
    const bleed = {
      flowFractionPerPercent: 0.01,
      percentTaken: 3,
      standardUncertainty: 0.005,
      from: 'engine deck',
    };
    const saving = answerOf(
      onlySpan(steadyLines(), driven({ suctionDrive: 'bleed', bleed })).saving,
    );
    // The 1800 lb are 3 % more than they would be without bleed.
    const costLb = 1800 - 1800 / 1.03;
    expect((saving.suctionKg ?? 0) / POUND_KG).toBeCloseTo(costLb, 6);
    expect(saving.suctionFrom).toBe('bleedSlope');
    expect(lbOf(saving.gross)).toBeCloseTo(600 + costLb, 6);
    expect(lbOf(saving.net)).toBeCloseTo(600, 6);
    expect(doubtLbOf(saving.gross)).toBeCloseTo(
      Math.hypot(doubtLbOf(saving.net), (1800 * 0.005) / 1.03 ** 2),
      6,
    );
  });
});

describe('fuel of the suction unit', () => {
  const unmetered = (): FlightSheet => {
    const sheet = steadySheet();
    return { ...sheet, instruments: sheet.instruments.filter(({ id }) => id !== 'FUS') };
  };
  const noCounter = changed(steadyLines(), (line) => unread(line, 'FUS'));

  it('comes from its gauge where it has no counter, with the doubt of the gaps', () => {
    const saving = answerOf(onlySpan(noCounter, unmetered()).saving);
    expect(saving.suctionFrom).toBe('gauge');
    const unitLb = (saving.suctionKg ?? 0) / POUND_KG;
    expect(Math.abs(unitLb - 80)).toBeLessThan(20);
    expect(doubtLbOf(saving.net)).toBeGreaterThan(doubtLbOf(saving.gross));
    if ('because' in saving.net) throw new Error('net must be given');
    expect(saving.net.interval95.high / POUND_KG).toBeGreaterThan(520);
    expect(saving.net.interval95.low / POUND_KG).toBeLessThan(520);
  });

  it('leaves net open where neither was read', () => {
    const neither = changed(noCounter, (line) => unread(line, 'SU'));
    const saving = answerOf(onlySpan(neither, unmetered()).saving);
    expect(saving.net).toEqual({ because: 'unitFuelNotRead' });
    expect(lbOf(saving.gross)).toBeCloseTo(600, 6);
  });
});

describe('a span with no numbers', () => {
  it('says that a counter went back', () => {
    const lines = changed(steadyLines(), (line) =>
      line.kind === 'suctionTurnedOff'
        ? {
            ...line,
            body: { ...line.body, readings: [{ instrument: 'FU1', value: 3, unit: 'lb' }] },
          }
        : line,
    );
    expect(reasonOf(onlySpan(lines).saving)).toBe('counterWentBack');
  });

  it('says that no weight is known', () => {
    const sheet = steadySheet({ weights: {} });
    expect(reasonOf(onlySpan(steadyLines(), sheet).saving)).toBe('noWeight');
  });

  it('says that an engine has no counter', () => {
    const sheet = steadySheet();
    const uncounted = {
      ...sheet,
      instruments: sheet.instruments.filter(({ id }) => id !== 'FU2'),
    };
    const lines = changed(steadyLines(), (line) => unread(line, 'FU2'));
    expect(reasonOf(onlySpan(lines, uncounted).saving)).toBe('countersNotRead');
  });

  it('says that the card lies outside the atmosphere', () => {
    const sheet = steadySheet();
    const condition = { ...sheet.condition, mach: 0 };
    expect(reasonOf(onlySpan(steadyLines(), { ...sheet, condition }).saving)).toBe(
      'outsideAtmosphere',
    );
  });
});

describe('a span that is not all cruise', () => {
  it('is struck where suction stayed on into the descent', () => {
    const lines = [
      ...without(['suctionTurnedOff']),
      say(9200, 'suctionTurnedOff', { wing: 'both', readings: countersAt(STAGES, 9200) }),
    ];
    expect(brokenIn(onlySpan(lines))).toContain('notLevel');
  });

  it('is struck where it was flown further from the card than flows repeat', () => {
    const high = { ...fuelRead(STAGES, 5000) };
    const lines = [
      ...steadyLines(),
      {
        ...high,
        body: {
          ...high.body,
          readings: (high.body?.readings ?? []).map((row) =>
            row.instrument === 'ALT' ? { ...row, value: 43_000 } : row,
          ),
        },
      },
    ];
    expect(brokenIn(onlySpan(lines))).toContain('farFromCardHeight');
  });
});
