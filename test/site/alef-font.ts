import { readFileSync } from 'node:fs';
import { typefaceFiles } from '../../src/make/typeface.ts';

/** Our typeface under another name, as a font that has one letter more, the Hebrew alef, in the shape of some glyph. */
export async function fontWithAlef(family: string, glyph: number): Promise<Buffer> {
  const [file = ''] = await typefaceFiles(700);
  const font = readFileSync(file);
  const [ours, own] = ['Public Sans', family].map((name) => Buffer.from(name, 'utf16le').swap16());
  for (let at = font.indexOf(ours ?? ''); at >= 0; at = font.indexOf(ours ?? '', at + 1)) own?.copy(font, at);
  // OpenType, "cmap": one subtable of format 12 (platform 3, encoding 10), with one group of one character.
  const letters = Buffer.alloc(40);
  letters.writeUInt16BE(1, 2);
  letters.writeUInt16BE(3, 4);
  letters.writeUInt16BE(10, 6);
  letters.writeUInt32BE(12, 8);
  letters.writeUInt16BE(12, 12);
  letters.writeUInt32BE(28, 16);
  letters.writeUInt32BE(1, 24);
  letters.writeUInt32BE(0x05d0, 28);
  letters.writeUInt32BE(0x05d0, 32);
  letters.writeUInt32BE(glyph, 36);
  const entry = Array.from({ length: font.readUInt16BE(4) }, (_, index) => 12 + 16 * index).find(
    (at) => font.toString('latin1', at, at + 4) === 'cmap',
  );
  if (entry === undefined) throw new Error('the typeface has no letters');
  const start = font.length + (-font.length & 3);
  font.writeUInt32BE(start, entry + 8);
  font.writeUInt32BE(letters.length, entry + 12);
  return Buffer.concat([font, Buffer.alloc(start - font.length), letters]);
}
