/**
 * Has the browser keep the site, once the page stands. Where there is no service worker, or none is allowed, the site is
 * as it was before, and there is nothing to say.
 */
import { keepSite } from './keepSite.ts';

/** Milliseconds after which it begins on a page that is never idle. */
const LATEST = 2000;
const notice = document.querySelector<HTMLElement>('[data-service-worker]');

if (import.meta.env.PROD && notice && 'serviceWorker' in navigator) {
  addEventListener('load', () => {
    const start = () => void keepSite(notice).catch(() => {});
    // After the page has become one that answers; some browsers cannot tell when they are idle.
    if ('requestIdleCallback' in window) requestIdleCallback(start, { timeout: LATEST });
    else setTimeout(start);
  });
}
