/**
 * How high a framed figure is at the frame's full width, estimated without a browser: for who shows it where no script
 * may run, and for oEmbed, which asks for a number. Tests hold it to what browsers lay out.
 */
import { WIDE_DRAWING } from '../drawingWidths.ts';
import type { Figure } from '../figure.ts';
import { PICTURE_NOTICE } from '../figureFiles.ts';

/** Pixels of a frame; wide enough for the wide drawing with its margins. */
export const FRAME_WIDTH = 720;
/** Space round all of it, pixels each side (`--space-3`). */
const PADDING = 12;
/** Pixels between title and drawing, and between drawing and caption (`--space-2`). */
const GAP = 8;
/** Height of a line in pixels, and characters that fit at least: in the site's face, which is narrower than most. */
const TITLE = { line: 22.95, characters: 85 } as const;
const CAPTION = { line: 21.6, characters: 104 } as const;
/** Characters of the line that names the site and the version. */
const SOURCE = 40;

/** Pixels, whole. */
export function estimateHeight({ title, caption, plot }: Figure, demonstration: boolean): number {
  const words = caption.length + (demonstration ? PICTURE_NOTICE.length : 0) + SOURCE;
  const lines = (length: number, { line, characters }: typeof TITLE | typeof CAPTION) =>
    line * Math.ceil(length / characters);
  const drawing = ((plot.height ?? 0) * (FRAME_WIDTH - 2 * PADDING)) / WIDE_DRAWING;
  // Browsers round each line: a pixel more.
  return 1 + Math.ceil(2 * PADDING + lines(title.length, TITLE) + 2 * GAP + drawing + lines(words, CAPTION));
}
