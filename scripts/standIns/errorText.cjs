/**
 * Stands in for the distributions library's formatting of its own error texts: the template and what it would
 * be filled with, one after the other. (CommonJS, as what it replaces.)
 */
module.exports = (...parts) => parts.join(' ');
