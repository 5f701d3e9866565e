/** What the notice of an own table and the store of it have in common. */

/** Name under which the browser keeps the mark that there is an own table. */
export const MARK_NAME = 'shy-of-failure own table';

/** Said on the window when the own table comes or goes, so that the notice on the page follows. */
export const MARK_CHANGED = 'own-table-changed';
