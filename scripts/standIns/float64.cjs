/** Stands in for the distributions library's own way to a Float64Array, which it looks for and could make where a browser had none. */
module.exports = Float64Array;
