import { describe, expect, it } from 'vitest';
import { folderWith, sheetwright } from '../cli/terminal.ts';

const sheet = (stock: string, prose = 'A card.'): string => `---
title: Card
measurements:
  unit: in
  stock: { cream: { name: Cream cardstock, sheet: 8 1/2 x 11 } }
  pieces:
    card: { stock: ${stock}, cut: 4 x 5 }
---
${prose}

## Cut it
Cut :piece[card].
`;
const SOUND = sheet('shared.moss');
const SHARED = `stock:
  moss: { name: Moss cardstock, sheet: 8 1/2 x 11 }
  fern: { name: Fern print, sheet: 12 x 1/0 }
`;

/** Which projects a make holds back. */
async function held(files: Readonly<Record<string, string | Uint8Array>>): Promise<string> {
  const { code, out } = await sheetwright(folderWith(files), 'make', '--no-pdf');
  const [, slugs] = /not updated because of errors: (.*)/u.exec(out) ?? [];
  expect(code).toBe(/ error /u.test(out) ? 1 : 0);
  return slugs ?? 'none';
}

describe('a project is held back', () => {
  it('by a fault of a shared value that it uses, not by one of another', async () => {
    const files = { 'shared/stock.yaml': SHARED, 'a/sheet.md': sheet('shared.fern'), 'b/sheet.md': SOUND };
    expect(await held(files)).toBe('a');
  });

  it('not by a word of its prose', async () => {
    const files = {
      'shared/stock.yaml': SHARED,
      'a/sheet.md': sheet('cream', 'The table is shared. Sit down.'),
    };
    expect(await held(files)).toBe('none');
  });

  it('by its own fault, the others are made', async () => {
    const files = { 'a/sheet.md': sheet('cream').replace('4 x 5', '4 x 5/0'), 'b/sheet.md': sheet('cream') };
    expect(await held(files)).toBe('a');
  });

  it.each([
    ['a fault in the settings', 'bench: { trimmer: 1/0 }\n'],
    ['settings that are no text', new Uint8Array([0, 255, 1])],
  ])('by %s, whatever it is', async (_, settings) => {
    const files = { 'site.yaml': settings, 'a/sheet.md': sheet('cream'), 'b/sheet.md': sheet('cream') };
    expect(await held(files)).toBe('a, b');
  });

  it('beside another of the same address: neither can be told to be the right one', async () => {
    const files = { 'my card/sheet.md': sheet('cream'), 'my-card/sheet.md': sheet('cream') };
    // The address, which both have, is said once.
    expect(await held(files)).toBe('my-card');
  });
});
