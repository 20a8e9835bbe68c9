import { OFFLINE, siteAssets } from '../assets.ts';
import type { Output } from '../output.ts';

/** `site/assets/`: the stylesheet, the typeface and the scripts of every page. */
export const assets: Output = {
  ofSite: ({ files }) => [
    { path: `site/${OFFLINE}`, produce: () => files.offline },
    ...siteAssets(files).map(({ name, bytes }) => ({ path: `site/assets/${name}`, produce: () => bytes })),
  ],
};
