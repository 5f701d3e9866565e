/**
 * Stands in for the matrix library's class of a matrix, of whose 150 methods its decomposition of a symmetric
 * matrix and the engine ask these; calling another throws, since it is not there. Rows are kept as the library keeps them, since
 * the decomposition exchanges them in place.
 */
export class AbstractMatrix {
  static from1DArray(rows, columns, numbers) {
    if (numbers.length !== rows * columns) throw new RangeError('data length does not match given dimensions');
    const matrix = new Matrix(rows, columns);
    for (let i = 0; i < rows; i++) {
      for (let j = 0; j < columns; j++) matrix.data[i][j] = numbers[i * columns + j];
    }
    return matrix;
  }

  static checkMatrix(matrix) {
    if (matrix instanceof AbstractMatrix) return matrix;
    throw new TypeError('a matrix was not one of this class, and the browser script is built without others');
  }

  isSquare() {
    return this.rows === this.columns;
  }

  isEmpty() {
    return this.rows === 0 || this.columns === 0;
  }
}

export default class Matrix extends AbstractMatrix {
  /** @param rows their number, or the rows themselves @param columns their number, with that of rows */
  constructor(rows, columns) {
    super();
    this.data =
      typeof rows === 'number'
        ? Array.from({ length: rows }, () => new Float64Array(columns))
        : rows.map((row) => Float64Array.from(row));
    this.rows = this.data.length;
    this.columns = columns ?? this.data[0]?.length ?? 0;
  }

  get(row, column) {
    return this.data[row][column];
  }

  getColumn(column) {
    return this.data.map((row) => row[column]);
  }

  set(row, column, value) {
    this.data[row][column] = value;
    return this;
  }
}
