import { iconFiles } from '../icons.ts';
import type { Output } from '../output.ts';

/** `site/assets/icon-….svg` and `.png`: what a browser shows beside the page's name. */
export const icons: Output = {
  id: 'icons',
  ofSite: () => iconFiles().map(({ name, from, produce }) => ({ path: `site/${name}`, from, produce })),
};
