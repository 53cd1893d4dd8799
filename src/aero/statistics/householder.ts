/** X = QR, held as what a fit asks of it. */
export interface Factors {
  /** β that minimises ‖y − Xβ‖: R⁻¹Qᵀy. */
  readonly solve: (y: readonly number[]) => readonly number[];
  /** R⁻ᵀx, whose length squared is the leverage of a row x. */
  readonly solveTransposed: (x: readonly number[]) => readonly number[];
}

interface Reflection {
  readonly vector: Float64Array;
  /** 2/‖v‖². */
  readonly scale: number;
}

/**
 * QR by Householder reflections, columns first brought to length one so that metres and kilograms do not
 * decide what counts as singular.
 *
 * @param rows at least as many rows as columns, all of one length
 * @returns `dependentColumns` when a column is a sum of those before it, within rounding
 * @see Golub and Van Loan, Matrix Computations, algorithm 5.2.1
 */
export function factorise(rows: readonly (readonly number[])[]): Factors | 'dependentColumns' {
  const width = rows[0]?.length ?? 0;
  const lengths: number[] = [];
  const columns: Float64Array[] = [];
  for (let j = 0; j < width; j += 1) {
    const column = Float64Array.from(rows, (row) => row[j] ?? 0);
    const length = Math.hypot(...column);
    if (length === 0) return 'dependentColumns';
    lengths.push(length);
    columns.push(column.map((x) => x / length));
  }
  const reflections: Reflection[] = [];
  const diagonal: number[] = [];
  for (const [j, column] of columns.entries()) {
    const reflection = reflectionOf(column, j);
    if (reflection === undefined) return 'dependentColumns';
    reflections.push(reflection);
    for (const other of columns.slice(j)) reflect(reflection, other);
    diagonal.push(entry(column, j));
  }
  // columns[j][i] is now R's entry in row i, column j, for i ≤ j.
  return {
    solve: (y) => {
      const turned = Float64Array.from(y);
      for (const reflection of reflections) reflect(reflection, turned);
      const beta = Array.from<number>({ length: width }).fill(0);
      for (let i = width - 1; i >= 0; i -= 1) {
        let rest = entry(turned, i);
        for (let j = i + 1; j < width; j += 1) rest -= entry(columns[j], i) * entry(beta, j);
        beta[i] = rest / entry(diagonal, i);
      }
      return beta.map((value, j) => value / entry(lengths, j));
    },
    solveTransposed: (x) => {
      const z: number[] = [];
      for (let j = 0; j < width; j += 1) {
        let rest = entry(x, j) / entry(lengths, j);
        for (let i = 0; i < j; i += 1) rest -= entry(columns[j], i) * entry(z, i);
        z.push(rest / entry(diagonal, j));
      }
      return z;
    },
  };
}

/** The mirror that folds the part of a unit-length column from row `from` down onto that row. */
function reflectionOf(column: Float64Array, from: number): Reflection | undefined {
  const vector = column.map((x, i) => (i < from ? 0 : x));
  const length = Math.hypot(...vector);
  if (length <= Number.EPSILON * column.length) return undefined;
  const head = entry(vector, from);
  // Adding with the sign of the head never cancels.
  vector[from] = head + (head < 0 ? -length : length);
  return { vector, scale: 2 / vector.reduce((total, x) => total + x * x, 0) };
}

function reflect({ vector, scale }: Reflection, column: Float64Array): void {
  const along = scale * vector.reduce((total, x, i) => total + x * entry(column, i), 0);
  for (const [i, x] of vector.entries()) column[i] = entry(column, i) - along * x;
}

function entry(values: ArrayLike<number> | undefined, index: number): number {
  const value = values?.[index];
  if (value === undefined) throw new RangeError(`no entry ${index} in ${values?.length ?? 0}`);
  return value;
}
