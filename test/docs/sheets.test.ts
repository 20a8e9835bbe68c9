import { describe, expect, it } from 'vitest';
import { printFindings } from '../../src/proof/print.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { findingsIn } from '../proof/workspace.ts';
import { type Block, blocksOf, blockWith, PAGES } from './pages.ts';
import { SHEET, wholeWorkspace } from './whole-sheet.ts';

/** What is printed about a block of the docs, where it stands in a sheet; notes aside. */
function saidOf(block: Block): string {
  const told = mergeFindings(findingsIn(readWorkspaceFromTexts(wholeWorkspace(block))));
  return printFindings(
    told.filter(({ severity }) => severity !== 'note'),
    { summary: false },
  );
}

// The manual of the rules and the pages of the forms are written from examples that have tests of their own.
const BLOCKS = PAGES.filter(({ path }) => path !== 'docs/rules.md')
  .flatMap(blocksOf)
  .filter(({ language }) => language === 'markdown' || language === 'yaml')
  .map((block) => [`${block.page}:${block.line}`, block] as const);

/** The one sheet that is wrong on purpose. */
const WRONG = blockWith('docs/writing-a-project.md', 'title: Plain layered card');

describe('a sheet or a part of one in the docs', () => {
  it.each(BLOCKS)('%s proofs clean', (_, block) => {
    const isWrong = block.text === WRONG.text;
    expect(saidOf(block)).toEqual(isWrong ? expect.stringContaining('[layer-overhang]') : '');
  });
});

describe('what the docs say is printed', () => {
  const RIGHT = blockWith('README.md', 'title: Seed packet keeper');
  const changed = RIGHT.text.replace('cut: 3 1/4 x 4 1/2', 'cut: 3 3/4 x 4 1/2');

  it.each([
    ['README.md', 'projects/seed-packet-keeper/sheet.md:9', { ...RIGHT, text: changed }],
    ['docs/writing-a-project.md', '1 error in 1 of 1 project', WRONG],
    ['docs/writing-a-project.md', 'for a 1/8 in reveal\n', WRONG],
  ])('%s, %s: is printed', (page, words, block) => {
    const shown = blockWith(page, words).text.replace(/\n1 error in .*\n/u, '');
    expect(saidOf(block)).toContain(shown.replaceAll(/[\w/-]+\/sheet\.md/gu, SHEET).trimEnd());
  });
});
