/**
 * A part of a spreadsheet file, tag by tag. Strict: a part that is cut short ends in an error instead of in fewer rows.
 * Neither format has a document type, so that no entity can be declared, and none is ever expanded.
 */
import { SaxesParser } from 'saxes';
import { FileRefusal } from '../refusal.ts';
import { type Parts, refuseBroken } from './parts.ts';

export type Attributes = Readonly<Record<string, string>>;

export interface Tags {
  /** @param name without its prefix */
  readonly open: (name: string, attributes: Attributes) => void;
  readonly close?: (name: string) => void;
  readonly text?: (text: string) => void;
}

/** Tells what stands in a part, which must be there: without its formats a workbook's dates would be numbers. @throws FileRefusal */
export async function readXml(parts: Parts, part: string, { open, close, text }: Tags): Promise<void> {
  if (!parts.names.has(part)) throw refuseBroken();
  const parser = new SaxesParser();
  parser.on('opentag', (tag) => open(localName(tag.name), tag.attributes));
  if (close) parser.on('closetag', (tag) => close(localName(tag.name)));
  if (text) {
    parser.on('text', text);
    parser.on('cdata', text);
  }
  const refuse = () => {
    throw refuseBroken();
  };
  parser.on('error', refuse);
  parser.on('doctype', refuse);
  try {
    await parts.read(part, (piece) => parser.write(piece));
    parser.close();
  } catch (error) {
    throw error instanceof FileRefusal ? error : refuseBroken();
  }
}

function localName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}
