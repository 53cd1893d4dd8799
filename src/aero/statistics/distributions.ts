/*
 * Normal and Student t distributions, good to 1e-10 relative and better (test/aero/distributions.test.ts).
 * Both quantiles solve for the upper tail, where no digits are lost to 1 − p.
 */

/** Above this many degrees of freedom the expansion in 1/ν is exact to rounding. */
const EXPANSION_FROM_DEGREES = 20_000;
const SERIES_LIMIT = 2.5;
const MOST_STEPS = 1000;

/** P(Z ≤ z) of the standard normal. @throws RangeError for NaN */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) throw new RangeError('z must be a number, got NaN');
  return z < 0 ? normalUpperTail(-z) : 1 - normalUpperTail(z);
}

/** z with P(Z ≤ z) = probability. @param probability above 0 and below 1 @throws RangeError outside */
export function normalQuantile(probability: number): number {
  requireProbability(probability);
  const tail = Math.min(probability, 1 - probability);
  // The tail is convex, so Newton from the middle walks up to the root and never past it.
  const z = newton(0, (at) => ({
    excess: normalUpperTail(at) - tail,
    slope: -normalDensity(at),
  }));
  return probability < 0.5 ? -z : z;
}

/** P(T ≤ t). @param degreesOfFreedom above 0, infinity allowed @throws RangeError outside */
export function studentTCdf(t: number, degreesOfFreedom: number): number {
  requireDegrees(degreesOfFreedom);
  if (degreesOfFreedom === Infinity) return normalCdf(t);
  if (Number.isNaN(t)) throw new RangeError('t must be a number, got NaN');
  const tail = studentUpperTail(Math.abs(t), degreesOfFreedom);
  return t < 0 ? tail : 1 - tail;
}

/**
 * t with P(T ≤ t) = probability.
 *
 * @param degreesOfFreedom above 0, not only whole numbers; infinity gives the normal quantile
 * @throws RangeError outside, or for a probability not above 0 and below 1
 */
export function studentTQuantile({
  probability,
  degreesOfFreedom,
}: {
  readonly probability: number;
  readonly degreesOfFreedom: number;
}): number {
  requireProbability(probability);
  requireDegrees(degreesOfFreedom);
  if (degreesOfFreedom > EXPANSION_FROM_DEGREES) {
    return expandedQuantile(normalQuantile(probability), degreesOfFreedom);
  }
  const tail = Math.min(probability, 1 - probability);
  const t = newton(0, (at) => ({
    excess: studentUpperTail(at, degreesOfFreedom) - tail,
    slope: -studentDensity(at, degreesOfFreedom),
  }));
  return probability < 0.5 ? -t : t;
}

/** Cornish and Fisher's expansion of t about the normal quantile, Abramowitz and Stegun 26.7.5. */
function expandedQuantile(z: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom === Infinity) return z;
  const first = (z ** 3 + z) / 4;
  const second = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
  const third = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384;
  return z + (first + (second + third / degreesOfFreedom) / degreesOfFreedom) / degreesOfFreedom;
}

function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** P(Z > z) for z ≥ 0: a series near the middle, a continued fraction in the tail. */
function normalUpperTail(z: number): number {
  if (z === Infinity) return 0;
  if (z < SERIES_LIMIT) {
    let term = z;
    let total = z;
    for (let odd = 3; term > total * Number.EPSILON; odd += 2) {
      term *= (z * z) / odd;
      total += term;
    }
    return 0.5 - normalDensity(z) * total;
  }
  // Mills' ratio from the bottom up: 1/(z + 1/(z + 2/(z + 3/(z + ...)))).
  let ratio = z;
  for (let step = 200; step >= 1; step -= 1) ratio = z + step / ratio;
  return normalDensity(z) / ratio;
}

function studentDensity(t: number, degreesOfFreedom: number): number {
  const scale = gammaHalfStepRatio(degreesOfFreedom / 2) / Math.sqrt(degreesOfFreedom * Math.PI);
  return scale * Math.exp(-((degreesOfFreedom + 1) / 2) * Math.log1p(t ** 2 / degreesOfFreedom));
}

/** P(T > t) for t ≥ 0, half an incomplete beta function of ν/(ν + t²). */
function studentUpperTail(t: number, degreesOfFreedom: number): number {
  const a = degreesOfFreedom / 2;
  const b = 0.5;
  const x = degreesOfFreedom / (degreesOfFreedom + t ** 2);
  const y = t ** 2 / (degreesOfFreedom + t ** 2);
  const power = Math.exp(-a * Math.log1p(t ** 2 / degreesOfFreedom));
  const front = power * Math.sqrt(y / Math.PI) * gammaHalfStepRatio(a);
  // The fraction converges fast on one side of the mean only; the other side uses the mirror image.
  if (x < (a + 1) / (a + b + 2)) return (0.5 * front * betaFraction(a, b, x)) / a;
  return 0.5 - (0.5 * front * betaFraction(b, a, y)) / b;
}

/** Γ(a + ½)/Γ(a) without the cancellation of two logarithms. */
function gammaHalfStepRatio(a: number): number {
  let factor = 1;
  let at = a;
  while (at < 16) {
    factor *= at / (at + 0.5);
    at += 1;
  }
  // Stirling's series of the ratio; the next term is below 1e-15 from 16 on.
  const inverse = 1 / at;
  const square = inverse * inverse;
  const series =
    -1 / 8 +
    square * (1 / 192 + square * (-1 / 640 + square * (17 / 14_336 - square * (31 / 18_432))));
  return factor * Math.sqrt(at) * Math.exp(inverse * series);
}

/** Continued fraction of the incomplete beta function by Lentz's method. */
function betaFraction(a: number, b: number, x: number): number {
  const tiny = Number.MIN_VALUE / Number.EPSILON;
  let c = 1;
  let d = 1 - ((a + b) * x) / (a + 1);
  d = 1 / (d === 0 ? tiny : d);
  let fraction = d;
  for (let m = 1; m <= MOST_STEPS; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    let change = 1;
    for (const numerator of [even, odd]) {
      d = 1 / notZero(1 + numerator * d, tiny);
      c = notZero(1 + numerator / c, tiny);
      change = d * c;
      fraction *= change;
    }
    if (Math.abs(change - 1) < Number.EPSILON) break;
  }
  return fraction;
}

function notZero(value: number, tiny: number): number {
  return value === 0 ? tiny : value;
}

function newton(
  start: number,
  at: (x: number) => { readonly excess: number; readonly slope: number },
): number {
  let x = start;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const { excess, slope } = at(x);
    const next = x - excess / slope;
    // Rounding ends the climb: the first step that does not go up is the last.
    if (!(next > x)) return x;
    x = next;
  }
  return x;
}

function requireProbability(probability: number): void {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`probability must be above 0 and below 1, got ${probability}`);
  }
}

function requireDegrees(degreesOfFreedom: number): void {
  if (!(degreesOfFreedom > 0)) {
    throw new RangeError(`degrees of freedom must be above 0, got ${degreesOfFreedom}`);
  }
}
