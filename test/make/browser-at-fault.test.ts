import { describe, expect, it } from 'vitest';
import { openExamination } from '../../src/examine/examine.ts';
import { Making } from '../../src/make/making.ts';
import type { Workshop } from '../../src/make/workshop.ts';
import { PrintFault } from '../../src/print/fault.ts';
import { Recall } from '../../src/recall/recall.ts';
import { CARD_SHEET } from '../card-sheet.ts';
import { folderWith } from '../cli/terminal.ts';

/** Makes a project for each letter, one after the other, in order; the browser fails at a page of those in capitals. */
async function held(letters: string): Promise<readonly string[]> {
  const slugs = [...letters].map((letter, index) => `${index}-${letter}`.toLowerCase());
  const root = folderWith(Object.fromEntries(slugs.map((slug) => [`${slug}/sheet.md`, CARD_SHEET])));
  const recall = await Recall.open(root, root, async (texts) => openExamination(texts));
  const workshop = {
    makeProject: async ({ slug }: { readonly slug: string }) => {
      if (/[A-Z]/u.test(letters[slugs.indexOf(slug)] ?? '')) throw new PrintFault(`${slug} was not printed`);
      const files = [{ path: `site/${slug}/${slug}.pdf`, bytes: '', why: [] }];
      const record = { source: '', sha256: '', card: undefined, inputs: {}, outputs: {} };
      return { findings: [], made: { files, gone: [], record } };
    },
  };
  const options = { root, out: `${root}/dist`, namedFrom: root, pdf: true, today: '2026-12-01' };
  const making = new Making(options, recall, async () => workshop as unknown as Workshop, {
    warmUp: () => {},
  });
  for (const spot of recall.spots) await making.makeProject(spot);
  return making.held;
}

describe('a browser that fails at a page', () => {
  it('of one project after the other is itself at fault', async () => {
    expect(await held('aBCDe')).toEqual(['1-b', '2-c', '3-d']);
    await expect(held('aBCDEf')).rejects.toThrow('4-e was not printed');
  });

  it('of many projects, and prints those between them, holds these alone', async () => {
    expect(await held('ABcDeFGh')).toEqual(['0-a', '1-b', '3-d', '5-f', '6-g']);
  });
});
