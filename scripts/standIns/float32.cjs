/** Stands in for the distributions library's own way to a Float32Array, which it looks for and could make where a browser had none. */
module.exports = Float32Array;
