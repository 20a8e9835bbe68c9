import { cpSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { forms } from '../../src/shape/forms/index.ts';
import { emptyFolder, sheetwright } from './terminal.ts';

describe('sheetwright draft', () => {
  it('writes a project that proofs clean, in a folder that had none', async () => {
    const folder = emptyFolder();
    const drafted = await sheetwright(folder, 'draft', 'my-first-card');
    expect(drafted).toMatchObject({ code: 0, err: '' });
    expect(drafted.out).toContain('projects/my-first-card/sheet.md');
    const { code, out } = await sheetwright(folder, 'proof', '--strict');
    expect(out).not.toMatch(/ (?:error|warning|note) /u);
    expect(code).toBe(0);
  });

  it.each(forms.map(({ name }) => name))('starts from a %s', async (name) => {
    const folder = emptyFolder();
    await sheetwright(folder, 'draft', 'trial', '--form', name);
    const { code, out } = await sheetwright(folder, 'proof', '--strict');
    expect(out).not.toMatch(/ (?:error|warning) /u);
    expect(code).toBe(0);
    expect(readFileSync(join(folder, 'projects/trial/sheet.md'), 'utf8')).toContain(`form: ${name}`);
  });

  it('does not write over a project', async () => {
    const folder = emptyFolder();
    await sheetwright(folder, 'draft', 'card');
    const sheet = join(folder, 'projects/card/sheet.md');
    writeFileSync(sheet, 'mine');
    expect((await sheetwright(folder, 'draft', 'card')).code).toBe(2);
    expect(readFileSync(sheet, 'utf8')).toBe('mine');
  });

  it('refuses a name that is no address, and a form that is not there, with what would do', async () => {
    const folder = emptyFolder();
    const named = await sheetwright(folder, 'draft', 'My Card');
    expect(named.code).toBe(2);
    expect(named.err).toContain('my-card');
    const formed = await sheetwright(folder, 'draft', 'card', '--form', 'cube');
    expect(formed.code).toBe(2);
    expect(formed.err).toContain('clip-top box');
    expect((await sheetwright(folder, 'draft', '../escape')).code).toBe(2);
    // Nothing would ever be made of a project in the folder of shared values.
    const shared = await sheetwright(folder, 'draft', 'shared');
    expect([shared.code, shared.err]).toEqual([2, expect.stringContaining('"shared" is no project')]);
    expect(existsSync(join(folder, 'projects'))).toBe(false);
  });

  it('makes a project of another, and says what became of it, what it takes and what no longer fits', async () => {
    const folder = emptyFolder();
    const demo = fileURLToPath(new URL('../../projects/', import.meta.url));
    for (const name of ['shared', 'seed-packet-keeper'])
      cpSync(`${demo}${name}`, join(folder, name), { recursive: true });
    const from = ['--from', 'seed-packet-keeper', '--holds'];
    const { code, out } = await sheetwright(
      folder,
      'draft',
      'my-box',
      ...from,
      '4 x 5 x 1/8',
      '--count',
      '6',
    );
    expect(out.split('\n').slice(0, 9)).toEqual([
      'wrote my-box/sheet.md from seed-packet-keeper',
      '',
      'box: inside 3 1/2 × 1 × 4 3/4, now 4 1/4 × 1 × 5 1/4 in',
      'front: 3 1/4 × 4 1/2, now 4 × 5 in',
      'strip: 3/4 × 4 1/2, now 3/4 × 5 in',
      'back: 3 1/4 × 4 1/2, now 4 × 5 in',
      'There is no more than 1/4 in to spare each way: with as much as before, it would not proof clean.',
      'It still says that it holds "seed packet"; the words of the steps and the photos are those of seed-packet-keeper.',
      'Its session is commented out: give it its own.',
    ]);
    expect(out).toContain(
      'One takes 1 sheet of Moss cardstock, 1 sheet of Cream cardstock, 1 sheet of Fern print.',
    );
    expect(code).toBe(0);
    const sheet = readFileSync(join(folder, 'my-box/sheet.md'), 'utf8');
    expect(sheet).toContain('title: My box\n');
    expect(existsSync(join(folder, 'my-box/photos/finished.jpg'))).toBe(true);

    const large = await sheetwright(folder, 'draft', 'big-box', ...from, '8 x 9 x 1', '--name', 'Big: a box');
    expect(large.code).toBe(1);
    expect(large.out).toContain('but shared.moss comes in sheets of 8 1/2 × 11 in  [piece-exceeds-sheet]');
    expect(readFileSync(join(folder, 'big-box/sheet.md'), 'utf8')).toContain('title: "Big: a box"\n');

    const refused = async (...typed: readonly string[]): Promise<string> => {
      const { code: failed, err } = await sheetwright(folder, 'draft', ...typed);
      expect(failed).toBe(2);
      return err;
    };
    expect(await refused('my-box', ...from, '4 x 5 x 1/8')).toContain('my-box is there already');
    expect(await refused('box', '--from', 'nothing', '--holds', '4 x 5 x 1')).toContain(
      'no project named "nothing" here',
    );
    expect(await refused('box', ...from, '4 x 5')).toContain('--holds takes three lengths');
    expect(await refused('box', ...from, '4 x 5 x 1', '--count', '0')).toContain(
      '--count takes a whole number',
    );
    expect(await refused('box', '--from', 'seed-packet-keeper')).toContain('--from needs --holds');
    expect(await refused('box', ...from, '4 x 5 x 1', '--form', 'tray')).toContain(
      'use --form or --from, not both',
    );
    expect(await refused('box', '--holds', '4 x 5 x 1')).toContain('--holds goes with --from');
    expect(await refused('box', ...from, '4 x 5 x 1', '--variant', 'small')).toContain(
      'seed-packet-keeper has no variants: leave --variant out',
    );
    expect(existsSync(join(folder, 'box'))).toBe(false);
  });
});
