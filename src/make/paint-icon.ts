import sharp from 'sharp';
import { FAVICON } from '../site/favicon.ts';

/** Wide enough for a phone's home screen. */
const PNG_SIDE = 180;

/** On white, with a border: a phone puts it on whatever ground it has and rounds its corners. */
export function paintIcon(): Promise<Uint8Array> {
  const border = PNG_SIDE / 10;
  return sharp(Buffer.from(FAVICON), { density: 400 })
    .resize(PNG_SIDE - 2 * border)
    .extend({ top: border, bottom: border, left: border, right: border, background: '#fff' })
    .flatten({ background: '#fff' })
    .png({ compressionLevel: 9 })
    .toBuffer();
}
