import { cpSync, mkdirSync, mkdtempSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, inject, it } from 'vitest';
import { make } from '../../src/make/make.ts';
import type { MakeResult } from '../../src/make/make-options.ts';
import { renamedOf } from '../../src/site/renamed.ts';

import { listed } from './bench.ts';

describe('an address of before', () => {
  it('leads to the project that had it, unless a project has it now', () => {
    const [a, b, c] = [
      listed('a', { was: ['old', 'b'] }),
      listed('b'),
      listed('c', { was: ['old', 'older'] }),
    ];
    expect(renamedOf([a, b, c])).toEqual([
      { was: 'old', project: a },
      { was: 'older', project: c },
    ]);
  });

  it('is kept by make, and told of where nothing leads on', async () => {
    const folder = mkdtempSync(join(inject('temporary'), 'renamed-'));
    const [root, out] = [join(folder, 'projects'), join(folder, 'dist')];
    mkdirSync(root);
    for (const name of ['pull-out-tag', 'shared', 'site.yaml']) {
      cpSync(join('projects', name), join(root, name), { recursive: true });
    }
    const again = (): Promise<MakeResult> =>
      make({ root, out, namedFrom: folder, pdf: false, today: '2026-11-25' });
    expect(await again()).toMatchObject({ made: ['pull-out-tag'], vanished: [] });
    renameSync(join(root, 'pull-out-tag'), join(root, 'note-tag'));
    expect((await again()).vanished).toEqual(['pull-out-tag']);

    const sheet = join(root, 'note-tag', 'sheet.md');
    writeFileSync(sheet, readFileSync(sheet, 'utf8').replace('---\n', '---\nwas: [pull-out-tag]\n'));
    renameSync(join(root, 'note-tag'), join(root, 'tag-with-note'));
    writeFileSync(
      join(root, 'tag-with-note', 'sheet.md'),
      readFileSync(join(root, 'tag-with-note', 'sheet.md'), 'utf8').replace(
        '[pull-out-tag]',
        '[pull-out-tag, note-tag]',
      ),
    );
    expect((await again()).vanished).toEqual([]);
    for (const was of ['pull-out-tag', 'note-tag']) {
      const page = readFileSync(join(out, 'site', was, 'index.html'), 'utf8');
      expect(page).toContain('content="0; url=../tag-with-note/index.html"');
      expect(page).toContain('href="../tag-with-note/index.html"');
    }
  });
});
