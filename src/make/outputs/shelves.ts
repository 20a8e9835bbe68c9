import { shelfHtml, shelvesOf } from '../../site/shelves.ts';
import { pagesAt } from '../assets.ts';
import type { Output } from '../output.ts';

/** `site/2026.html` and the like: the archive by years, where there is too much for one page. */
export const shelves: Output = {
  ofSite: (material) => {
    const all = shelvesOf(material.cards);
    return all.map((shelf) => ({
      path: `site/${shelf.path}`,
      produce: () => shelfHtml(shelf, all, pagesAt('', material, 'list')),
    }));
  },
};
