/**
 * A page's side of the service worker: registers it, and says when the site cannot be reached and when a newer version
 * is there. Nothing changes under the reader's hands: a version is taken by the button, or when all pages were closed.
 */
import { type Newer, stateConnection, stateNewer } from './words.ts';
import type { Asked } from './workerScope.ts';

/** How long a page that could not reach the site waits before it tries again, ms: common practice, no source. */
const TRY_AGAIN = 60_000;

/**
 * @param notice with the worker's address, a place for words and a button
 * @throws where the browser refuses service workers here
 */
export async function keepSite(notice: HTMLElement): Promise<void> {
  const workers = navigator.serviceWorker;
  const registration = await workers.register(notice.dataset.serviceWorker ?? '');
  const [text, button] = [notice.querySelector('[data-text]'), notice.querySelector('button')];
  if (!text || !button) return;

  let isReached = navigator.onLine;
  let hadWorker = workers.controller !== null;
  let isAsked = false;
  let isOlder = false;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const show = () => {
    const newer: Newer = registration.active && registration.waiting ? 'waiting' : isOlder ? 'in use' : 'none';
    const { words, action } = stateNewer(newer);
    // Before all is kept no page would work without a network, so nothing is said of that.
    const connection = registration.active ? stateConnection(isReached, navigator.onLine) : '';
    text.textContent = [connection, words].filter((one) => one !== '').join(' ');
    button.textContent = action;
    button.hidden = action === '';
    notice.hidden = text.textContent === '';
  };
  /** Asking for the worker's script anew is also how the browser learns of a newer version. */
  const look = async () => {
    clearTimeout(timer);
    isReached =
      navigator.onLine &&
      (await registration.update().then(
        () => true,
        () => false,
      ));
    if (!isReached) timer = setTimeout(() => void look(), TRY_AGAIN);
    show();
  };
  const follow = (worker: ServiceWorker | null) => worker?.addEventListener('statechange', show);

  follow(registration.installing);
  registration.addEventListener('updatefound', () => follow(registration.installing));
  workers.addEventListener('controllerchange', () => {
    if (isAsked) location.reload();
    isOlder ||= hadWorker;
    hadWorker = true;
    show();
  });
  button.addEventListener('click', () => {
    isAsked = true;
    if (registration.waiting) tell(registration.waiting, 'take over');
    else location.reload();
  });
  for (const change of ['online', 'offline']) addEventListener(change, () => void look());
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden) void look();
  });

  if (workers.controller) tell(workers.controller, 'page shown');
  show();
  if (registration.active) await look();
}

function tell(worker: ServiceWorker, asked: Asked): void {
  worker.postMessage(asked);
}
