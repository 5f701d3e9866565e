/**
 * Stands in for what the charts library adds up before it draws: bins and stacks. The figures draw numbers of the
 * analysis as they are.
 */
function refuse() {
  throw new Error('a bin or a stack was asked of a chart, but the browser script is built without them');
}

const unlessBinned = (options = {}) => (options.interval === undefined ? options : refuse());
const unlessStacked = (from, to) => (options) =>
  options[from] === undefined || options[to] === undefined ? refuse() : options;
const maybeStackX = unlessStacked('x1', 'x2');
const maybeStackY = unlessStacked('y1', 'y2');

export {
  maybeStackX,
  maybeStackY,
  refuse as bin,
  refuse as binX,
  refuse as binY,
  refuse as maybeThresholds,
  unlessBinned as maybeDenseIntervalX,
  unlessBinned as maybeDenseIntervalY,
};
