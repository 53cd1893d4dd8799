/** Draws that are the same for the same numbers, whichever machine. */
export interface Chance {
  /** From `low` to `high`, evenly. */
  readonly between: (low: number, high: number) => number;
  /** A whole number from `low` to `high`, both included. */
  readonly whole: (low: number, high: number) => number;
  /** Around zero, one standard deviation wide unless told. */
  readonly normal: (standardDeviation?: number) => number;
  /** True in this share of draws. */
  readonly happens: (share: number) => boolean;
  /** One of these, each as likely. */
  readonly oneOf: <const Choice>(choices: readonly [Choice, ...Choice[]]) => Choice;
}

const WARM_UP = 15;

/**
 * A stream of its own for each pair of numbers, so that flight 4000 is the same flight however many fly before it.
 *
 * The generator is sfc32 ("small fast counting", 32 bits; from memory), normal draws by Box and Muller.
 */
export function chanceOf(seed: number, stream: number): Chance {
  let [a, b, c, counter] = [seed | 0, stream | 0, 0x9e3779b9 | 0, 1];
  const uniform = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return (sum >>> 0) / 2 ** 32;
  };
  for (let round = 0; round < WARM_UP; round += 1) uniform();
  return {
    between: (low, high) => low + (high - low) * uniform(),
    whole: (low, high) => low + Math.floor((high - low + 1) * uniform()),
    normal: (standardDeviation = 1) =>
      standardDeviation *
      Math.sqrt(-2 * Math.log(1 - uniform())) *
      Math.cos(2 * Math.PI * uniform()),
    happens: (share) => uniform() < share,
    oneOf: (choices) => choices[Math.floor(choices.length * uniform())] ?? choices[0],
  };
}
