/** What a page says of the connection and of versions of the site. */

/** Whether a newer version is there: no; here, but not in use; in use, while this page is of the one before. */
export type Newer = 'none' | 'waiting' | 'in use';

/**
 * Empty where there is nothing to say.
 *
 * @param isReached whether the site answers
 * @param isOnline whether the browser knows of a network
 */
export function stateConnection(isReached: boolean, isOnline: boolean): string {
  if (isReached) return '';
  return `${isOnline ? 'The site cannot be reached' : 'Offline'}: pages come from what this browser keeps.`;
}

/** A sentence and the name of the button that takes the newer version; both empty where there is none. */
export function stateNewer(newer: Newer): { readonly words: string; readonly action: string } {
  switch (newer) {
    case 'none':
      return { words: '', action: '' };
    case 'waiting':
      return { words: 'A newer version of this site is here.', action: 'Show it' };
    case 'in use':
      return { words: 'This page is of an older version than the one in use now.', action: 'Show the newer one' };
  }
}
