/**
 * Stands in for the charts library's named colour schemes: every figure takes its colours from the styles'
 * tokens, so that they follow light and dark, and no scale of a figure is one of colour.
 */
function refuse(scheme) {
  throw new Error(
    `the colour scheme "${scheme}" was asked of a chart, but the browser script is built without schemes`,
  );
}

const isNone = () => false;

export {
  isNone as isCategoricalScheme,
  isNone as isDivergingScheme,
  refuse as maybeBooleanRange,
  refuse as ordinalRange,
  refuse as ordinalScheme,
  refuse as quantitativeScheme,
};
