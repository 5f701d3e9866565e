/** Tells the page that frames this one how high it is, now and whenever that changes. */
import { HEIGHT_MESSAGE } from '../../ui/frame.ts';

const tell = () =>
  // The body's own height: that of the whole document is never below the frame's.
  parent.postMessage({ type: HEIGHT_MESSAGE, height: Math.ceil(document.body.getBoundingClientRect().height) }, '*');
new ResizeObserver(tell).observe(document.body);
tell();
