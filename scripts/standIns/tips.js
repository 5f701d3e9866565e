/**
 * Stands in for the charts library's tips and marks that follow the pointer: every figure has a table under it instead,
 * which a keyboard and a screen reader reach too.
 */
function refuse() {
  throw new Error('a tip or a mark at the pointer was asked of a chart, but the browser script is built without them');
}

export {
  refuse as anchorX,
  refuse as anchorY,
  refuse as pointer,
  refuse as pointerX,
  refuse as pointerY,
  refuse as Tip,
  refuse as tip,
};
