import { FAVICON } from '../../site/favicon.ts';
import { iconNames } from '../assets.ts';
import type { Output } from '../output.ts';

/** `site/assets/icon-….svg` and `.png`: what a browser shows beside the page's name. */
export const icons: Output = {
  ofSite: ({ painter }) => {
    const { svg, png } = iconNames();
    return [
      { path: `site/${svg}`, from: () => FAVICON, produce: () => FAVICON },
      { path: `site/${png}`, from: () => FAVICON, produce: () => painter.paintIcon() },
    ];
  },
};
