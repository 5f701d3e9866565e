/**
 * Has the browser keep the site, once the page stands. Loaded on all pages, so it stays small. Where there is no
 * service worker, or none is allowed, the site is as it was before, and there is nothing to say.
 */
const notice = document.querySelector<HTMLElement>('[data-service-worker]');

if (import.meta.env.PROD && notice && 'serviceWorker' in navigator) {
  addEventListener('load', () => {
    void import('./keepSite.ts').then(({ keepSite }) => keepSite(notice)).catch(() => {});
  });
}
