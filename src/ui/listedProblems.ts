/** Problems of a table that a page lists, and a worker sends to it; the rest is counted, and all are in the file for download. */
export const LISTED_PROBLEMS = 100;
