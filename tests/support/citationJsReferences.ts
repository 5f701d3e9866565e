/**
 * A figure as a reference by Citation.js and, for the two styles, citeproc-js: what the site's own writer
 * (src/figures/citing/references.ts) is held to. Nothing is fetched.
 */
import { plugins } from '@citation-js/core';
import '@citation-js/plugin-bibtex';
import '@citation-js/plugin-csl';
import '@citation-js/plugin-ris';
import type { ReferenceItem } from '../../src/figures/citing/figureItem.ts';
import type { Reference } from '../../src/figures/citing/references.ts';

// The plugin's ASCII would drop every character that it knows no command for; ours escapes what TeX reads as a command.
plugins.config.get('@bibtex').format.asciiOnly = false;

/** What TeX, or a reader of BibTeX, would take for something else. */
const TEX: Readonly<Record<string, string>> = {
  '&': '\\&',
  '%': '\\%',
  $: '\\$',
  '#': '\\#',
  _: '\\_',
  '{': '\\textbraceleft{}',
  '}': '\\textbraceright{}',
  '\\': '\\textbackslash{}',
  '~': '\\textasciitilde{}',
  '^': '\\textasciicircum{}',
  '<': '\\textless{}',
  '>': '\\textgreater{}',
};

export function referByLibrary(item: ReferenceItem): Reference {
  return {
    apa: inStyle(item, 'apa'),
    // The style numbers its list; a reference by itself has no number.
    vancouver: inStyle(item, 'vancouver').replace(/^1\.\s*/u, ''),
    bibtex: writeBibtex(item),
    ris: writeRis(item),
    cslJson: `${JSON.stringify([item], null, 2)}\n`,
  };
}

function inStyle(item: ReferenceItem, template: 'apa' | 'vancouver'): string {
  return String(plugins.output.format('bibliography', [item], { template, format: 'text', lang: 'en-US' })).trim();
}

function writeBibtex({ URL: address, ...item }: ReferenceItem): string {
  // An address stands as it is between the braces of its field, so it must have none of its own.
  const plain = address.replace(/[{}\\]/gu, encodeURIComponent);
  const entry = { ...mapText(item, escapeTex), URL: plain };
  return `${String(plugins.output.format('bibtex', [entry])).trim()}\n`;
}

function escapeTex(text: string): string {
  return (
    text
      .replace(/[&%$#_{}\\~^<>]/gu, (character) => TEX[character])
      // Pairs that TeX joins into a dash or a quotation mark are kept apart.
      .replace(/-(?=-)|`(?=`)|'(?=')/gu, '$&{}')
  );
}

/** All strings of a value, however deep, through a function. */
function mapText<Value>(value: Value, by: (text: string) => string): Value;
function mapText(value: unknown, by: (text: string) => string): unknown {
  if (typeof value === 'string') return by(value);
  if (Array.isArray(value)) return value.map((part) => mapText(part, by));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, mapText(part, by)]));
}

/**
 * The plugin names the tags; the lines are written here, since its own text breaks words after 70
 * characters. RIS has one line a value, in the order TY … ER.
 */
function writeRis(item: ReferenceItem): string {
  const [tags] = plugins.output.format('ris', [item], { format: 'object' }) as [Record<string, unknown>];
  const { TY, ID: _cut, DA: _year, ...others } = tags;
  const lines = Object.entries({ TY, ...others, ID: item.id })
    .flatMap(([tag, value]) => [value].flat().map((one) => ({ tag, value: one })))
    .filter(({ value }) => value !== undefined)
    .map(({ tag, value }) => `${tag}  - ${value}`);
  return [...lines, 'ER  - ', ''].join('\r\n');
}
