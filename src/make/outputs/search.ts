import { searchAsset } from '../assets.ts';
import type { Output } from '../output.ts';

/** `site/assets/search-….js`: what the list is searched with, loaded when somebody does. */
export const search: Output = {
  ofSite: ({ cards, files }) => {
    const { name, bytes } = searchAsset(cards, files);
    return [{ path: `site/assets/${name}`, produce: () => bytes }];
  },
};
