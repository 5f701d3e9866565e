/** What a page says of the connection, in whatever order the site answers and the network goes. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { keepSite } from '../../src/offline/keepSite.ts';

const OFFLINE = 'Offline: pages come from what this browser keeps.';
const settle = () => new Promise((resolve) => setTimeout(resolve));

afterEach(() => vi.unstubAllGlobals());

/** A page that the service worker keeps already; each of its looks for the site waits to be answered. */
async function openPage() {
  const events = new EventTarget();
  const looks: { readonly answer: () => void; readonly fail: () => void }[] = [];
  const registration = Object.assign(new EventTarget(), {
    active: {},
    waiting: null,
    installing: null,
    update: () => new Promise<void>((answer, fail) => looks.push({ answer, fail: () => fail(new TypeError()) })),
  });
  const workers = Object.assign(new EventTarget(), { controller: null, register: async () => registration });
  const connection = { onLine: true, serviceWorker: workers };
  vi.stubGlobal('navigator', connection);
  vi.stubGlobal('addEventListener', events.addEventListener.bind(events));
  vi.stubGlobal('window', { setTimeout: () => 0 });
  vi.stubGlobal(
    'ResizeObserver',
    class {
      observe() {}
    },
  );
  vi.stubGlobal('document', { documentElement: { style: { setProperty: () => {} } } });
  const text = { textContent: '' };
  const button = Object.assign(new EventTarget(), { hidden: true });
  const notice = { dataset: {}, children: [text, button], hidden: true, offsetHeight: 40 };
  void keepSite(notice as unknown as HTMLElement);
  await settle();
  const turn = async (onLine: boolean) => {
    connection.onLine = onLine;
    events.dispatchEvent(new Event(onLine ? 'online' : 'offline'));
    await settle();
  };
  return { looks, notice, text, turn };
}

describe('the notice of the connection', () => {
  it('stays while the network is gone, though a look from before is answered after it went', async () => {
    const { looks, notice, text, turn } = await openPage();
    expect(looks).toHaveLength(1);
    await turn(false);
    expect([text.textContent, notice.hidden]).toEqual([OFFLINE, false]);
    looks[0].answer();
    await settle();
    expect([text.textContent, notice.hidden]).toEqual([OFFLINE, false]);
  });

  it('goes when the network is back and the site answers, though a look from before fails after that', async () => {
    const { looks, notice, text, turn } = await openPage();
    await turn(false);
    await turn(true);
    expect(looks).toHaveLength(2);
    looks[1].answer();
    await settle();
    expect([text.textContent, notice.hidden]).toEqual(['', true]);
    looks[0].fail();
    await settle();
    expect([text.textContent, notice.hidden]).toEqual(['', true]);
  });

  it('says that the site cannot be reached where the network is there and the site is not', async () => {
    const { looks, text } = await openPage();
    looks[0].fail();
    await settle();
    expect(text.textContent).toBe('The site cannot be reached: pages come from what this browser keeps.');
  });
});
