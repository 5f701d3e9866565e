/**
 * Stands in for the matrix library's functions by element (abs, exp and 60 more), which would be added to its
 * class: only its decomposition of a symmetric matrix is used, and calling what is not there throws.
 */
export function installMathOperations() {}
