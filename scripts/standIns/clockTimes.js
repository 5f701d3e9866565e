/** Stands in for the formatting of dates: the figures' axes are of years, hours and repetitions, all plain numbers. */
function refuse(specifier) {
  throw new Error(
    `a date written as "${specifier}" was asked of a chart, but the browser script is built without dates`,
  );
}

export { refuse as timeFormat, refuse as utcFormat };
