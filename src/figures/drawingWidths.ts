/** Widths at which the wide and the narrow drawing of a figure are laid out, pixels: on pages, in frames and in files. */
export const WIDE_DRAWING = 640;
export const NARROW_DRAWING = 340;
