/** Stands in for the distributions library's own way to a Uint8Array, which it looks for and could make where a browser had none. */
module.exports = Uint8Array;
