import { baselineAt, fitBaseline, type FittedBaseline } from '../../../src/aero/baseline.ts';
import { studentTQuantile } from '../../../src/aero/statistics/distributions.ts';
import {
  fitLinear,
  predict,
  predictionUncertainty,
  type Fit,
} from '../../../src/aero/statistics/leastSquares.ts';
import { given, itemAt, valueOf, type Answers, type RowReader } from '../referenceRow.ts';

function norris(row: RowReader): Fit {
  return line(row.list('x'), row.list('y'));
}

function thermometer(row: RowReader): Fit {
  const zero = row.raw('t0');
  return line(
    row.list('t').map((t) => t - zero),
    row.list('b'),
  );
}

const AT_30_DEG_C = [1, 10];

function line(x: readonly number[], y: readonly number[]): Fit {
  const rows = x.map((value) => [1, value]);
  return given(fitLinear({ rows, observations: y, weighting: { kind: 'equal' } }));
}

function deviation(fit: Fit, index: number): number {
  return Math.sqrt(itemAt(itemAt(fit.covariance, index), index));
}

function correlation(fit: Fit): number {
  return itemAt(itemAt(fit.covariance, 0), 1) / (deviation(fit, 0) * deviation(fit, 1));
}

function totalSquares(y: readonly number[]): number {
  const mean = y.reduce((total, value) => total + value, 0) / y.length;
  return y.reduce((total, value) => total + (value - mean) ** 2, 0);
}

export const regressionAnswers: Answers = {
  'intercept B0': (row) => itemAt(norris(row).coefficients, 0),
  'slope B1': (row) => itemAt(norris(row).coefficients, 1),
  'standard deviation of B0': (row) => deviation(norris(row), 0),
  'standard deviation of B1': (row) => deviation(norris(row), 1),
  'norris-rsd': (row) => valueOf(norris(row).residualStandardDeviation),
  'R-squared': (row) => 1 - norris(row).residualSumOfSquares / totalSquares(row.list('y')),
  'F statistic': (row) => {
    const { residualSumOfSquares: rss, degreesOfFreedom } = norris(row);
    return ((totalSquares(row.list('y')) - rss) * degreesOfFreedom) / rss;
  },
  'residual sum of squares': (row) => norris(row).residualSumOfSquares,
  'intercept y1': (row) => itemAt(thermometer(row).coefficients, 0),
  'slope y2': (row) => itemAt(thermometer(row).coefficients, 1),
  'standard uncertainty of y1': (row) => deviation(thermometer(row), 0),
  'standard uncertainty of y2': (row) => deviation(thermometer(row), 1),
  'correlation coefficient r(y1,y2)': (row) => correlation(thermometer(row)),
  'predicted correction at 30 degC': (row) => predict(thermometer(row), AT_30_DEG_C).value,
  'standard uncertainty of that correction': (row) =>
    predict(thermometer(row), AT_30_DEG_C).standardUncertainty,
  'intercept y1, full precision': (row) => itemAt(thermometer(row).coefficients, 0),
  'slope y2, full precision': (row) => itemAt(thermometer(row).coefficients, 1),
  'u(y1), full precision': (row) => deviation(thermometer(row), 0),
  'u(y2), full precision': (row) => deviation(thermometer(row), 1),
  'r(y1,y2), full precision': (row) => correlation(thermometer(row)),
  'gum-h3-s-hp': (row) => valueOf(thermometer(row).residualStandardDeviation),
  'correction at 30 degC': (row) => predict(thermometer(row), AT_30_DEG_C).value,
  'u of correction at 30 degC': (row) => predict(thermometer(row), AT_30_DEG_C).standardUncertainty,
  'standard deviation of one new reading at 30 degC': (row) =>
    valueOf(predictionUncertainty(thermometer(row), AT_30_DEG_C)),
  'sum of squared residuals': (row) => thermometer(row).residualSumOfSquares,
};

/** The baseline of the example, in the tables' own units: weight in 1000 lbf, flow in lb/h. */
function baseline(row: RowReader, trust: 'absolute' | 'relative' = 'relative'): FittedBaseline {
  const doubts = row.has('u_y') ? row.list('u_y') : undefined;
  const flows = row.list('referred_fuel_flow');
  // The condition of a row is called as the weights of the data are: those stand in the first row.
  const weights = dataWeights(row);
  const runs = flows.map((fuelFlowKgPerS, index) => ({
    fuelFlowKgPerS,
    weightN: itemAt(weights, index),
    standardUncertaintyKgPerS: doubts === undefined ? 1 : itemAt(doubts, index),
    readingCount: 1,
  }));
  return given(fitBaseline({ runs, trust, referenceWeightN: 400 }));
}

function dataWeights(row: RowReader): readonly number[] {
  return row.has('data') ? row.through('data').list('W_over_delta') : row.list('W_over_delta');
}

function atCondition(row: RowReader): ReturnType<typeof baselineAt> {
  return baselineAt(baseline(row), row.raw('W_over_delta'));
}

export const baselineAnswers: Answers = {
  'baseline a': (row) => itemAt(baseline(row).fit.coefficients, 0),
  'baseline b': (row) => itemAt(baseline(row).fit.coefficients, 1),
  'residual standard deviation, 6 degrees of freedom': (row) =>
    valueOf(baseline(row).fit.residualStandardDeviation),
  'standard error of a': (row) => deviation(baseline(row).fit, 0),
  'standard error of b': (row) => deviation(baseline(row).fit, 1),
  'largest leverage of the baseline points': (row) => Math.max(...baseline(row).fit.leverages),
  'sum of leverages (number of parameters)': (row) =>
    baseline(row).fit.leverages.reduce((total, h) => total + h, 0),
  'predicted baseline referred fuel flow': (row) => atCondition(row).fuelFlowKgPerS,
  'leverage of the new condition': (row) => atCondition(row).leverage,
  'leverage of the new condition (exceeds the largest baseline leverage: extrapolation)': (row) =>
    atCondition(row).leverage,
  'half-width of the 95 percent prediction interval of one new reading': (row) => {
    const { fit } = baseline(row);
    const z = (row.raw('W_over_delta') / 400) ** 2;
    const t = studentTQuantile({ probability: 0.975, degreesOfFreedom: fit.degreesOfFreedom });
    return t * valueOf(predictionUncertainty(fit, [1, z]));
  },
  'standard uncertainty of the fitted mean': (row) => atCondition(row).standardUncertaintyKgPerS,
  'weighted a': (row) => itemAt(baseline(row).fit.coefficients, 0),
  'weighted b': (row) => itemAt(baseline(row).fit.coefficients, 1),
  'standard uncertainty of a when the u_y are taken as known': (row) =>
    deviation(baseline(row, 'absolute').fit, 0),
  'standard uncertainty of a when the weights are only relative': (row) =>
    deviation(baseline(row).fit, 0),
  'weighted residual sum of squares': (row) => baseline(row).fit.residualSumOfSquares,
};
