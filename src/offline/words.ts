/** What a page says of the connection and of versions of the site; empty where there is nothing to say. */

/**
 * @param isReached whether the site answers
 * @param isOnline whether the browser knows of a network
 */
export function stateConnection(isReached: boolean, isOnline: boolean): string {
  if (isReached) return '';
  return `${isOnline ? 'The site cannot be reached' : 'Offline'}: pages come from what this browser keeps.`;
}

/**
 * @param isWaiting whether a newer version is kept that no page shows yet
 * @param isOlder whether the page is of an older version than other pages show
 */
export function stateNewer(isWaiting: boolean, isOlder: boolean): string {
  if (isWaiting) return 'A newer version of this site is here.';
  return isOlder ? 'A newer version of this site is in use; this page is older.' : '';
}

/** Event of the window just before the page is loaded anew by its own button: what is not in its address yet goes there. */
export const RELOADING = 'site-reloading';
