/** Names under which the browser keeps which table is read, for every page and tab. */

/** Version of the table in use; nothing stands there for the site's. */
export const IN_USE = 'shy-of-failure table in use';
/** Where a mark stood when there could be only one own table. */
export const OLD_MARK = 'shy-of-failure own table';
