import sharp from 'sharp';
import { FAVICON } from '../site/favicon.ts';
import type { Icons } from '../site/head.ts';
import { sha256 } from './files.ts';

/** Wide enough for a phone's home screen. */
const PNG_SIDE = 180;

/** The icons' names below the site's root; they change with the drawing. */
export function iconNames(): Icons {
  const mark = sha256(FAVICON).slice(0, 10);
  return { svg: `assets/icon-${mark}.svg`, png: `assets/icon-${mark}.png` };
}

export function iconFiles(): readonly {
  readonly name: string;
  readonly from: string;
  readonly produce: () => Promise<Uint8Array> | string;
}[] {
  const { svg, png } = iconNames();
  return [
    { name: svg, from: FAVICON, produce: () => FAVICON },
    { name: png, from: FAVICON, produce: iconPng },
  ];
}

/** On white, with a border: a phone puts it on whatever ground it has and rounds its corners. */
function iconPng(): Promise<Uint8Array> {
  const border = Math.round(PNG_SIDE / 10);
  return sharp(Buffer.from(FAVICON), { density: 400 })
    .resize(PNG_SIDE - 2 * border)
    .extend({ top: border, bottom: border, left: border, right: border, background: '#fff' })
    .flatten({ background: '#fff' })
    .png({ compressionLevel: 9 })
    .toBuffer();
}
