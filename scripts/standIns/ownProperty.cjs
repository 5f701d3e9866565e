/** Stands in for the distributions library's own way to define a property, which it makes where a browser had none. (CommonJS, as what it replaces.) */
module.exports = (object, name, value) => Object.defineProperty(object, name, { value });
