/** Tells the page that frames this one how high it is, now and whenever that changes. */
import { HEIGHT_MESSAGE } from '../../ui/frame.ts';

const tell = () => {
  // What stands there while a figure is worked out is lower: the page round the frame would jump, and jump back.
  if (document.querySelector('astro-island[ssr], [aria-busy=true]')) return;
  // The body's own height: that of the whole document is never below the frame's.
  parent.postMessage({ type: HEIGHT_MESSAGE, height: Math.ceil(document.body.getBoundingClientRect().height) }, '*');
};
new ResizeObserver(tell).observe(document.body);
// Also where what came has the height of what stood there before.
new MutationObserver(tell).observe(document.body, { subtree: true, attributeFilter: ['ssr', 'aria-busy'] });
tell();
