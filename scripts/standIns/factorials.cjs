/**
 * Stands in for the distributions library's table of 0! to 170!, whose digits weigh more than what makes them: whole
 * numbers of any size are exact, and each becomes the nearest double, as those of the table are. (CommonJS, as what it
 * replaces.)
 */
const exact = [1n];
while (exact.length <= 170) exact.push(exact[exact.length - 1] * BigInt(exact.length));
module.exports = exact.map(Number);
