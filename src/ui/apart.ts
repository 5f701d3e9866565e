/**
 * How the islands of a page start: as soon as their scripts are there, but in a task of their own. What a script holds
 * is made ready when it is first run; to wake the page in that same task would hold up a finger or a key for both.
 */
import type { ClientDirective } from 'astro';

const startApart: ClientDirective = async (load) => {
  const wake = await load();
  await new Promise((resolve) => setTimeout(resolve));
  await wake();
};

export default startApart;
