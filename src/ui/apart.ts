/**
 * How the islands of a page start: their scripts are fetched once the page has been painted, which can be read before it
 * can be worked with, and wake it in a task of their own. What a script holds is made ready when it is first run; to wake
 * the page in that same task would hold up a finger or a key for both. What a reader did before is done then.
 */
import type { ClientDirective } from 'astro';
import { holdEarly, watchEarly } from './early.ts';

const startApart: ClientDirective = async (load, _options, island) => {
  await painted();
  const wake = await load();
  await new Promise((resolve) => setTimeout(resolve));
  const doEarly = holdEarly(island);
  await new Promise((resolve) => setTimeout(resolve));
  await wake();
  await doEarly();
};

export default startApart;

watchEarly();

/**
 * At once where nobody looks: a hidden page is not painted, nor need a frame be that is out of sight, whose page waits
 * for its height.
 */
function painted(): Promise<void> {
  return new Promise((resolve) => {
    if (document.hidden || window.parent !== window) resolve();
    else requestAnimationFrame(() => setTimeout(resolve));
  });
}
