/**
 * Solves a small linear system in place: `size` rows of `size + 1` numbers, the right side last. Gauss–Jordan with the
 * largest pivot of the column. The answer stands in the last column. False where the rows are not independent.
 */
export function solveLinear(matrix: Float64Array, size: number): boolean {
  const width = size + 1;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++) {
      if (Math.abs(matrix[row * width + column]!) > Math.abs(matrix[pivot * width + column]!)) pivot = row;
    }
    const largest = matrix[pivot * width + column]!;
    if (!(Math.abs(largest) > 1e-300)) return false;
    if (pivot !== column) {
      for (let k = column; k < width; k++) {
        const kept = matrix[column * width + k]!;
        matrix[column * width + k] = matrix[pivot * width + k]!;
        matrix[pivot * width + k] = kept;
      }
    }
    for (let row = column + 1; row < size; row++) {
      const factor = matrix[row * width + column]! / largest;
      if (factor === 0) continue;
      for (let k = column + 1; k < width; k++) matrix[row * width + k]! -= factor * matrix[column * width + k]!;
    }
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = matrix[row * width + size]!;
    for (let k = row + 1; k < size; k++) sum -= matrix[row * width + k]! * matrix[k * width + size]!;
    matrix[row * width + size] = sum / matrix[row * width + row]!;
  }
  return true;
}
