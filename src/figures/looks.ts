/** How figures look: faces and colours are the style sheet's, so that they follow light and dark. */
import type { BandName } from '../model/result.ts';

const FACE = { fontFamily: 'var(--sans)', background: 'none', color: 'var(--ink)' } as const;

/** Of a figure with two scales. */
export const FIGURE_STYLE = { fontSize: '14px', ...FACE } as const;

/** Margins, pixels, and style of a figure of growth against reserve; its lower axis, without the range. */
export const RESERVE_FRAME = {
  marginLeft: 44,
  marginBottom: 44,
  marginTop: 24,
  marginRight: 12,
  style: FIGURE_STYLE,
} as const;
export const RESERVE_AXIS = {
  label: 'repetitions in reserve →',
  labelAnchor: 'center',
  ticks: 6,
  tickSize: 0,
  labelOffset: 38,
} as const;

/** Of words that lie on a drawing: paper round them, so that they can be read on whatever is below. */
export const HALO = { stroke: 'var(--paper)', strokeWidth: 4 } as const;
/** Of what is said of a place on the lower axis, at the top of the figure. */
export const TOP_LABEL = { frameAnchor: 'top', dy: -2, fontWeight: 600, ...HALO } as const;

/** Of a list of names, which has more words. */
export const LIST_STYLE = { fontSize: '13px', ...FACE } as const;

/** Colour and mark of a band's rows and curves. */
export const LOAD_LOOKS = {
  light: { colour: 'var(--light-load)', symbol: 'diamond' },
  heavy: { colour: 'var(--heavy-load)', symbol: 'circle' },
  all: { colour: 'var(--heavy-load)', symbol: 'circle' },
} as const satisfies Readonly<Record<BandName, object>>;
