import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slugOf } from '../../src/project/slug.ts';

describe('a slug', () => {
  it.each([
    ['seed-keeper', 'seed-keeper'],
    ['Seed Keeper', 'seed-keeper'],
    ['  Été — à la plage! ', 'ete-a-la-plage'],
    ['Größe', 'grosse'],
    ['box_2 (new)', 'box-2-new'],
    ['ﬁne', 'fine'],
    ['箱', 'project'],
    ['..', 'project'],
    ['', 'project'],
  ])('of %j is %s', (folder, slug) => {
    expect(slugOf(folder)).toBe(slug);
  });

  it('is always fit for an address, and its own slug', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), (folder) => {
        const slug = slugOf(folder);
        expect(slug).toMatch(/^[a-z0-9]+(?:-[a-z0-9]+)*$/u);
        expect(slugOf(slug)).toBe(slug);
      }),
      { seed: 11, numRuns: 500 },
    );
  });
});
