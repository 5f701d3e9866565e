/** Stands in for the matrix library's statistics of rows and columns, which only its unused methods call. */
function refuse() {
  throw new Error('a statistic was asked of a matrix, but the browser script is built without them');
}

export {
  refuse as centerAll,
  refuse as centerByColumn,
  refuse as centerByRow,
  refuse as getScaleAll,
  refuse as getScaleByColumn,
  refuse as getScaleByRow,
  refuse as productAll,
  refuse as productByColumn,
  refuse as productByRow,
  refuse as scaleAll,
  refuse as scaleByColumn,
  refuse as scaleByRow,
  refuse as sumAll,
  refuse as sumByColumn,
  refuse as sumByRow,
  refuse as varianceAll,
  refuse as varianceByColumn,
  refuse as varianceByRow,
};
