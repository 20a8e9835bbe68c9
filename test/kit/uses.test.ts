import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { emptyFolder, sheetwright } from '../cli/terminal.ts';

const MOSS = '{ name: Moss card, sheet: 12 x 12, weight: 80 lb cover, color: "#6b7f5b"';
const FIR = '{ name: Fir card, sheet: 8 1/2 x 11, weight: 216 gsm, color: "#2f4b36" }';

/** Two projects: a card cut from the shared paper `moss`, and one that only shares a supply and a tag. */
function workspace(moss: string, fir = FIR): string {
  const folder = emptyFolder();
  const write = (path: string, text: string): void => {
    mkdirSync(join(folder, path, '..'), { recursive: true });
    writeFileSync(join(folder, path), text);
  };
  write(
    'shared/all.yaml',
    `stock:\n  moss: ${moss}\n  fir: ${fir}\nsupplies:\n  tape: { item: Tape, kind: adhesive }\npieces:\n  base: { stock: shared.moss, cut: 9 x 10 }\n`,
  );
  write(
    'card/sheet.md',
    `---\ntitle: Card\nsession: 2027-06-10\ntags: [spring]\nsupplies:\n  - { use: shared.tape, each: 24 in }\nmeasurements:\n  unit: in\n  pieces:\n    base: { use: shared.base }\n    tag: { stock: shared.moss, cut: 2 x 3, count: 4 }\n---\nA card.\n\n## Cut\nCut :piece[base] and :piece[tag].\n`,
  );
  write(
    'note/sheet.md',
    `---\ntitle: Note\ntags: [Spring]\nsupplies: [shared.tape]\nmeasurements:\n  unit: in\n  stock: { cream: { sheet: 8 1/2 x 11 } }\n  pieces: { note: { stock: cream, cut: 3 x 4 } }\n---\nA note.\n\n## Cut\nCut :piece[note].\n`,
  );
  return folder;
}

describe('sheetwright uses', () => {
  const folder = workspace(`${MOSS} }`);
  const uses = async (name: string): Promise<readonly object[]> =>
    JSON.parse((await sheetwright(folder, 'uses', name, '--json')).out);

  it('finds a stock by its name in shared/ and by what it is called, with every piece that is cut from it', async () => {
    for (const name of ['shared.moss', 'moss card'])
      expect(await uses(name)).toMatchObject([
        {
          project: 'card',
          session: '2027-06-10',
          pieces: [
            { piece: 'base', width: { in: '9' }, height: { in: '10' }, count: 1 },
            { piece: 'tag', count: 4 },
          ],
        },
      ]);
  });

  it('finds a shared piece, a supply with its amount, and a tag', async () => {
    expect(await uses('shared.base')).toMatchObject([{ project: 'card', pieces: [{ piece: 'base' }] }]);
    expect(await uses('shared.tape')).toMatchObject([
      { project: 'card', supplies: [{ item: 'Tape', each: '24 in' }] },
      { project: 'note', supplies: [{ item: 'Tape', each: null }] },
    ]);
    expect(await uses('spring')).toMatchObject([{ tagged: true }, { tagged: true }]);
  });

  it('finds a shared stock that has a short name in the sheet', async () => {
    const named = workspace(`${MOSS} }`);
    const sheet = join(named, 'note/sheet.md');
    const short = readFileSync(sheet, 'utf8').replace(
      'cream: { sheet: 8 1/2 x 11 }',
      'cream: { use: shared.moss }',
    );
    writeFileSync(sheet, short);
    const { out } = await sheetwright(named, 'uses', 'shared.moss');
    expect(out).toContain('note\n  1 × note, 3 × 4 in for each kit\nshared.moss: 2 projects\n');
  });

  it.each([
    ['shared.ms', 'write "shared.moss"'],
    ['mos card', 'write "Moss card"'],
    ['spings', 'write "spring"'],
    ['tap', 'write "Tape"'],
    ['lavender buds', 'name a stock, a supply'],
  ])('says that nothing is called "%s", and the nearest name', async (name, remedy) => {
    expect(await sheetwright(folder, 'uses', name)).toMatchObject({
      code: 2,
      err: expect.stringContaining(`nothing here uses "${name}": ${remedy}`),
    });
  });
});

describe('a paper that is no longer sold', () => {
  const proof = async (moss: string, fir?: string): Promise<readonly Record<string, string>[]> =>
    JSON.parse((await sheetwright(workspace(moss, fir), 'proof', '--json')).out);

  it('tells the sessions after its last day what changes with the other paper', async () => {
    const [sold, small, ...others] = await proof(`${MOSS}, until: 2027-03-31, instead: shared.fir }`);
    expect(others).toEqual([]);
    expect(sold).toMatchObject({ rule: 'no-longer-sold', severity: 'warning' });
    expect(sold?.message).toBe('Moss card can be had until 2027-03-31, but the session is on 2027-06-10');
    for (const change of [
      'take Fir card in its place',
      'its color is #2f4b36, not #6b7f5b',
      'it weighs 216 gsm, not 80 lb cover',
      'its sheets are 8 1/2 × 11 in, not 12 × 12 in',
      'its metric sheets are 210 × 297 mm, not 305 × 305 mm',
    ])
      expect(sold?.remedy).toContain(change);
    expect(small).toMatchObject({ rule: 'substitute-too-small', severity: 'warning' });
    expect(small?.message).toBe(
      'base cannot be cut from the sheets of Fir card, which takes the place of Moss card after 2027-03-31',
    );
  });

  it('tells what the other paper is too small for in the metric edition alone', async () => {
    const small = (sheets: string): ReturnType<typeof proof> =>
      proof(
        '{ sheet: 12 x 12, until: 2027-03-31, instead: shared.fir }',
        `{ name: Fir card, sheet: 12 x 12${sheets} }`,
      );
    expect((await small('')).map(({ message }) => message)).toEqual([
      'Moss can be had until 2027-03-31, but the session is on 2027-06-10',
    ]);
    const [sold, metric, ...others] = await small(', metric sheet: A4');
    expect(others).toEqual([]);
    expect(sold).toMatchObject({
      remedy: expect.stringContaining('its metric sheets are 210 × 297 mm, not 305 × 305 mm'),
    });
    expect(metric).toMatchObject({
      severity: 'note',
      message:
        'in the metric edition base cannot be cut from the sheets of Fir card, which takes the place of Moss after 2027-03-31',
    });
  });

  it('leaves a session on the last day alone, and names a substitute that is not there', async () => {
    expect(await proof(`${MOSS}, until: 2027-06-10, instead: shared.fir }`)).toEqual([]);
    const [unknown] = await proof(`${MOSS}, until: 2027-06-10, instead: shared.fur }`);
    expect(unknown).toMatchObject({
      rule: 'unknown-reference',
      message: expect.stringContaining('shared.fur'),
    });
  });
});
