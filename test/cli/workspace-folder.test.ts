import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { emptyFolder, folderWith, sheetwright } from './terminal.ts';

/** A folder whose workspace `projects` holds one drafted project, `card`. */
async function drafted(): Promise<string> {
  const folder = emptyFolder();
  await sheetwright(folder, 'draft', 'card');
  return folder;
}

describe('the workspace of a command', () => {
  it.each([
    ['the folder it runs in', 'projects', []],
    ['projects/ below it', '.', []],
    ['the folder named', '.', ['projects']],
    ['the folder named from elsewhere', 'elsewhere', ['../projects']],
  ])('is %s', async (_, cwd, named) => {
    const folder = await drafted();
    mkdirSync(join(folder, 'elsewhere'));
    const { code, out } = await sheetwright(join(folder, cwd), 'proof', ...named);
    expect([code, out]).toEqual([0, expect.stringMatching(/1 project/u)]);
  });

  it.each(['projects/card', 'projects/card/sheet.md', './projects/card/'])(
    'is not %s: the folder around it is named',
    async (named) => {
      const { code, err } = await sheetwright(await drafted(), 'proof', named);
      expect([code, err]).toEqual([
        2,
        `sheetwright: ${named} is one project: name the folder of projects that it lies in, projects\n`,
      ]);
    },
  );

  it.each(['nowhere', 'notes.txt', 'empty'])('is not %s', async (named) => {
    const folder = folderWith({ 'notes.txt': 'x', 'empty/nothing.txt': '' });
    const { code, err } = await sheetwright(folder, 'proof', named);
    expect([code, err]).toEqual([2, expect.stringMatching(/^sheetwright: no projects in \w+.*\n$/u)]);
  });

  it('may hold projects by links', async () => {
    const folder = await drafted();
    mkdirSync(join(folder, 'bench'));
    symlinkSync(join(folder, 'projects/card'), join(folder, 'bench/card'), 'junction');
    expect((await sheetwright(folder, 'proof', 'bench')).code).toBe(0);
  });
});
