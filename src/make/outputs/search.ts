import { searchAsset } from '../assets.ts';
import type { Output } from '../output.ts';

/** `site/assets/search-….js`: what the list is searched with, loaded when somebody does. */
export const search: Output = {
  ofSite: (material) => {
    const { name, bytes } = searchAsset(material.cards, material);
    return [{ path: `site/assets/${name}`, produce: () => bytes }];
  },
};
