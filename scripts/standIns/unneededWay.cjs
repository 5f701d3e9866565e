/**
 * Stands in for ways of computing that the distributions library holds ready and that Student's t and the normal
 * distribution never take (studentsT.ts says which and why). (CommonJS, as what it replaces.)
 */
module.exports = () => {
  throw new Error(
    'a distribution was asked for in a way that the browser script is built without: Student’s t takes 0.4 degrees of freedom or more',
  );
};
