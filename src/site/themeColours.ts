/** The ground of the pages, for what the browser draws around them: as the styles have it. */
import tokens from '../styles/tokens.css?raw';

const [light, dark] = [...tokens.matchAll(/--paper: (#[\da-f]{6});/gu)].map(([, colour]) => colour);
if (!light || !dark) throw new Error('tokens.css: expected --paper as six hexadecimal digits, for light and for dark');

export const themeColours = { light, dark } as const;
