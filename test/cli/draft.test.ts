import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
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
});
