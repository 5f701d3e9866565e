/** Stands in for the distributions library's own way to a Uint16Array, which it looks for and could make where a browser had none. */
module.exports = Uint16Array;
