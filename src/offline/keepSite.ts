/**
 * A page's side of the service worker: registers it, and says when the site cannot be reached and when a newer version
 * is there. Nothing changes under the reader's hands: a version is taken by the button, or when all pages were closed.
 * Loaded on all pages, so it stays small.
 */
import { RELOADING, stateConnection, stateNewer } from './words.ts';
import type { Asked } from './workerScope.ts';

/** How long a page that could not reach the site waits before it tries again, ms: common practice, no source. */
const TRY_AGAIN = 60_000;

/**
 * @param notice with the worker's address, and with a place for words and the button in it
 * @throws where the browser refuses service workers here
 */
export async function keepSite(notice: HTMLElement): Promise<void> {
  const workers = navigator.serviceWorker;
  const registration = await workers.register(notice.dataset.serviceWorker ?? '');
  const [text, button] = [...notice.children] as [HTMLElement, HTMLButtonElement];

  let isReached = navigator.onLine;
  let hadWorker = workers.controller !== null;
  let isAsked = false;
  let isOlder = false;
  let timer = 0;
  /** Number of the newest look; what an older one comes to when that has ended is not heard. */
  let newest = 0;
  /** Of the notice as it stands, pixels. */
  let height = 0;

  const show = () => {
    // Before all is kept no page would work without a network, so nothing is said of that; nor is a first version newer.
    const { active, waiting } = registration;
    const newer = stateNewer(Boolean(active && waiting), isOlder);
    const said = `${active ? stateConnection(isReached, navigator.onLine) : ''} ${newer}`.trim();
    // Said anew, it would be read out anew.
    if (said !== text.textContent) text.textContent = said;
    button.hidden = !newer;
    notice.hidden = !said;
    // What else keeps to the lower edge stands above it, and what has the focus is not behind it. Measured only where it
    // stands, and told only where it is another: it is told to the root, and styles the whole page anew.
    const measured = said ? notice.offsetHeight : 0;
    if (measured !== height) document.documentElement.style.setProperty('--kept-notice', `${measured}px`);
    height = measured;
  };
  /** Asking for the worker's script anew is also how the browser learns of a newer version. */
  const look = async () => {
    clearTimeout(timer);
    newest++;
    const mine = newest;
    const found =
      navigator.onLine &&
      (await registration.update().then(
        () => true,
        () => false,
      ));
    if (mine !== newest) return;
    isReached = found;
    if (!isReached) timer = window.setTimeout(look, TRY_AGAIN);
    show();
  };
  const follow = () => registration.installing?.addEventListener('statechange', show);

  const reload = () => {
    dispatchEvent(new Event(RELOADING));
    location.reload();
  };

  follow();
  registration.addEventListener('updatefound', follow);
  workers.addEventListener('controllerchange', () => {
    if (isAsked) reload();
    isOlder ||= hadWorker;
    hadWorker = true;
    show();
  });
  button.addEventListener('click', () => {
    isAsked = true;
    if (registration.waiting) registration.waiting.postMessage('take over' satisfies Asked);
    else reload();
  });
  for (const change of ['online', 'offline', 'focus']) addEventListener(change, look);
  new ResizeObserver(show).observe(notice);

  workers.controller?.postMessage('page shown' satisfies Asked);
  show();
  if (registration.active) await look();
}
