/** A figure in a frame for another page: its markup, one rule for the site's figures and for those of a reader's settings. */
import { FRAME_WIDTH } from '../figures/citing/frameHeight.ts';

/** What a framed page posts to the page round it, with its height in pixels. */
export const HEIGHT_MESSAGE = 'shy-of-failure-height';

export interface Frame {
  /** Whole address of what is framed. */
  readonly address: string;
  readonly title: string;
  /** Pixels, until the frame says how high it is, and where no script may run. */
  readonly height: number;
}

/**
 * Follows the height that the frame posts: heard from this very frame and from the site it is of only, so that no other
 * frame on the page can change it, and within bounds. Small, since it is pasted; in words of every browser since 2015.
 */
const LISTENER = `(function(f){addEventListener("message",function(e){var h=e.data&&e.data.type==="${HEIGHT_MESSAGE}"?Number(e.data.height):0;if(e.source===f.contentWindow&&e.origin===new URL(f.src).origin&&h>0&&h<5000)f.height=Math.ceil(h)})})(document.currentScript.previousElementSibling)`;

export function writeFrame({ address, title, height }: Frame): string {
  return `<iframe src="${escapeAttribute(address)}" title="${escapeAttribute(title)}" width="100%" height="${height}" style="border:0;max-width:${FRAME_WIDTH}px" loading="lazy"></iframe>\n<script>${LISTENER}</script>`;
}

function escapeAttribute(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
