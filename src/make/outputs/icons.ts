import { FAVICON } from '../../site/favicon.ts';
import { iconNames } from '../assets.ts';
import { loadSharp } from '../load-sharp.ts';
import type { Output } from '../output.ts';

/** `site/assets/icon-….svg` and `.png`: what a browser shows beside the page's name. */
export const icons: Output = {
  ofSite: () => {
    const { svg, png } = iconNames();
    return [
      { path: `site/${svg}`, from: () => FAVICON, produce: () => FAVICON },
      { path: `site/${png}`, from: () => FAVICON, produce: iconPng },
    ];
  },
};

/** Wide enough for a phone's home screen. */
const PNG_SIDE = 180;

/** On white, with a border: a phone puts it on whatever ground it has and rounds its corners. */
function iconPng(): Promise<Uint8Array> {
  const border = Math.round(PNG_SIDE / 10);
  return loadSharp()(Buffer.from(FAVICON), { density: 400 })
    .resize(PNG_SIDE - 2 * border)
    .extend({ top: border, bottom: border, left: border, right: border, background: '#fff' })
    .flatten({ background: '#fff' })
    .png({ compressionLevel: 9 })
    .toBuffer();
}
