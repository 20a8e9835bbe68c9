import { renamedHtml, renamedOf } from '../../site/renamed.ts';
import { pagesAt } from '../assets.ts';
import type { Output } from '../output.ts';

/** `site/<was>/index.html`: an address that a project had before, which leads on to the one it has. */
export const renamed: Output = {
  ofSite: (material) =>
    renamedOf(material.cards).map((each) => ({
      path: `site/${each.was}/index.html`,
      produce: () => renamedHtml(each, pagesAt('../', material, 'list')),
    })),
};
