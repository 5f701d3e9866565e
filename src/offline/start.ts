/**
 * Has the browser keep the site, once the page stands. Where there is no service worker, or none is allowed, the site is
 * as it was before, and there is nothing to say.
 */
import { keepSite } from './keepSite.ts';

const notice = document.querySelector<HTMLElement>('[data-service-worker]');

if (import.meta.env.PROD && notice && 'serviceWorker' in navigator) {
  addEventListener('load', () => {
    keepSite(notice).catch(() => {});
  });
}
