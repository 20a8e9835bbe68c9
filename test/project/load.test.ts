import { execFileSync } from 'node:child_process';
import { chmod, mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { loadWorkspace } from '../../src/shape/workspace.ts';
import { faultsOf, sheetOf } from './reading.ts';

let root: string;

beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'workspace-'));
});

afterEach(async () => {
  await rm(root, { recursive: true, force: true });
});

async function put(path: string, content: string | Uint8Array): Promise<void> {
  await mkdir(dirname(join(root, path)), { recursive: true });
  await writeFile(join(root, path), content);
}

const CARD = sheetOf('pieces: { a: { cut: 3 x 4 } }', '![flat](photos/flat.jpg)\n');

describe('a workspace on disk', () => {
  it('is the folders that have a sheet, with settings and shared files', async () => {
    await put('site.yaml', 'title: Bench\n');
    await put('shared/stock.yaml', 'stock: { moss: { sheet: 8 x 8 } }\n');
    await put('shared/notes.txt', 'not: { yaml');
    await put('card/sheet.md', CARD);
    await put('card/photos/flat.jpg', 'x');
    await put('A box/sheet.md', sheetOf('pieces: { a: { stock: shared.moss, cut: 3 x 4 } }'));
    await put('.hidden/sheet.md', CARD);
    await put('dist/sheet.md', CARD);
    await put('drafts/later/sheet.md', CARD);
    const workspace = await loadWorkspace(root, { namedFrom: root });
    expect(workspace.root).toBe(root);
    expect(workspace.site.title).toBe('Bench');
    expect(workspace.findings).toEqual([]);
    expect(workspace.projects.map(({ slug, folder, file }) => [slug, folder, file.path])).toEqual([
      ['a-box', 'A box', 'A box/sheet.md'],
      ['card', 'card', 'card/sheet.md'],
    ]);
    expect(workspace.projects.map(faultsOf)).toEqual([[], []]);
  });

  it('names its files from where the command runs', async () => {
    await put('projects/card/sheet.md', CARD);
    const paths = async (namedFrom: string): Promise<string[]> =>
      (await loadWorkspace(join(root, 'projects'), { namedFrom })).projects.map(({ file }) => file.path);
    expect(await paths(root)).toEqual(['projects/card/sheet.md']);
    expect(await paths(join(root, 'projects/card'))).toEqual(['sheet.md']);
    expect(await paths(join(root, 'elsewhere'))).toEqual(['../projects/card/sheet.md']);
  });

  it('that is empty has no projects', async () => {
    expect((await loadWorkspace(root)).projects).toEqual([]);
  });

  it('that is not there is the caller’s mistake', async () => {
    await expect(loadWorkspace(join(root, 'none'))).rejects.toThrow('ENOENT');
  });
});

describe('a file that cannot be read as text', () => {
  it.each<[string, Uint8Array | string, string[]]>([
    [
      'a picture',
      new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]),
      ['not-text: '],
    ],
    ['text with a zero byte', '---\ntitle: A\0\n---\n', ['not-text: ']],
    ['Latin-1', new Uint8Array([0x2d, 0x2d, 0x2d, 0x0a, 0xe9, 0x0a]), ['not-text: ']],
    ['UTF-16', new Uint8Array([0xff, 0xfe, 0x2d, 0x00, 0x2d, 0x00]), ['not-text: ']],
    ['nothing', '', ['empty-file: ']],
  ])('%s', async (_, content, faults) => {
    await put('box/sheet.md', content);
    await put('card/sheet.md', sheetOf('unit: in'));
    const { projects } = await loadWorkspace(root);
    expect(projects.map(({ slug, title }) => [slug, title.value])).toEqual([
      ['box', 'box'],
      ['card', 'Box'],
    ]);
    expect(projects.map(faultsOf)).toEqual([faults, []]);
  });

  it('is a fault of the workspace where it is shared or the settings', async () => {
    await put('site.yaml', new Uint8Array([0, 1, 2]));
    await put('shared/stock.yaml', new Uint8Array([0xff]));
    const workspace = await loadWorkspace(root, { namedFrom: root });
    const findings = [...workspace.site.findings, ...workspace.findings];
    expect(findings.map(({ rule, at }) => [rule, at.file.path])).toEqual([
      ['not-text', 'site.yaml'],
      ['not-text', 'shared/stock.yaml'],
    ]);
    expect(workspace.site.title).toBe('Paper projects');
  });

  it('may be a folder, a link to itself or to nothing, or locked', async () => {
    await mkdir(join(root, 'folder/sheet.md'), { recursive: true });
    await mkdir(join(root, 'loop'));
    await symlink('sheet.md', join(root, 'loop/sheet.md'));
    await mkdir(join(root, 'astray'));
    await symlink('gone.md', join(root, 'astray/sheet.md'));
    await put('locked/sheet.md', CARD);
    await chmod(join(root, 'locked/sheet.md'), 0);
    const { projects } = await loadWorkspace(root);
    const problems = projects.map(({ slug, findings }) => [
      slug,
      ...findings.map((fault) => 'problem' in fault.facts && fault.facts.problem),
    ]);
    expect(problems.slice(0, 2)).toEqual([
      ['astray', 'it is a link that leads nowhere'],
      ['folder', 'it is a folder'],
    ]);
    expect(problems.at(-1)).toEqual(['loop', 'it is a link that leads to itself']);
    // Whoever may read everything can read the locked one, too.
    if (process.getuid?.() !== 0) expect(problems[2]).toEqual(['locked', 'you are not allowed to read it']);
  });

  it('is a regular file of the workspace, and no larger than anybody writes', async () => {
    const outside = await mkdtemp(join(tmpdir(), 'outside-'));
    await writeFile(join(outside, 'sheet.md'), CARD);
    await writeFile(join(outside, 'x.yaml'), 'stock: { moss: { sheet: 8 x 8 } }\n');
    await put('large/sheet.md', `${CARD}${'x'.repeat(2_000_000)}`);
    for (const name of ['leaving', 'pipe']) await mkdir(join(root, name));
    await put('recorded/sheet.md', CARD.replace('![flat](photos/flat.jpg)', 'A card.'));
    execFileSync('mkfifo', [join(root, 'recorded/revisions.yaml')]);
    await symlink(join(outside, 'sheet.md'), join(root, 'leaving/sheet.md'));
    execFileSync('mkfifo', [join(root, 'pipe/sheet.md')]);
    await put('shared/own.yaml', 'stock: { fern: { sheet: 8 x 8 } }\n');
    await symlink(join(outside, 'x.yaml'), join(root, 'shared/x.yaml'));
    await put('whole/sheet.md', CARD.replace('![flat](photos/flat.jpg)', 'A card.'));
    await symlink('../whole/sheet.md', join(root, 'whole/again.md'));
    const { projects, findings } = await loadWorkspace(root, { namedFrom: root });
    const problems = projects.flatMap(({ slug, findings: own }) =>
      own.flatMap(({ facts }) => ('problem' in facts ? [[slug, facts.problem]] : [])),
    );
    expect(problems).toEqual([
      ['large', 'it is larger than 2 MB, which nobody writes'],
      ['leaving', 'it is a link that leads out of the workspace'],
      ['pipe', 'it is a pipe or a device, not a file'],
      ['recorded', 'it is a pipe or a device, not a file'],
    ]);
    expect(findings.map(({ rule, at }) => [rule, at.file.path])).toEqual([
      ['unreadable-file', 'shared/x.yaml'],
    ]);
    await rm(outside, { recursive: true });
  });

  it('has a byte order mark taken off and Windows line ends left alone', async () => {
    await put('box/sheet.md', `\uFEFF${CARD.replaceAll('\n', '\r\n')}`);
    await put('box/photos/flat.jpg', 'x');
    const [project] = (await loadWorkspace(root)).projects;
    expect(project && faultsOf(project)).toEqual([]);
    expect(project?.file.text.startsWith('---\r\n')).toBe(true);
  });
});

describe('pictures on disk', () => {
  it('must be files within the project’s folder, links followed', async () => {
    await put('secret.jpg', 'x');
    await put('box/photos/real.jpg', 'x');
    await put(
      'box/sheet.md',
      sheetOf(
        'unit: in',
        ['real', 'inner', 'leaving', 'folder/secret', 'none', 'broken']
          .map((name) => `![x](photos/${name}.jpg)`)
          .join('\n'),
      ),
    );
    await mkdir(join(root, 'box/photos/sub.jpg'));
    await symlink('real.jpg', join(root, 'box/photos/inner.jpg'));
    await symlink('../../secret.jpg', join(root, 'box/photos/leaving.jpg'));
    await symlink('../..', join(root, 'box/photos/folder'));
    await symlink('nowhere.jpg', join(root, 'box/photos/broken.jpg'));
    const [project] = (await loadWorkspace(root)).projects;
    expect(project && faultsOf(project)).toEqual([
      'outside-picture: photos/leaving.jpg',
      'outside-picture: photos/folder/secret.jpg',
      'missing-picture: photos/none.jpg',
      'missing-picture: photos/broken.jpg',
    ]);
  });

  it('are found in a project folder that is itself a link', async () => {
    await put('store/card/sheet.md', CARD);
    await put('store/card/photos/flat.jpg', 'x');
    await mkdir(join(root, 'projects'));
    await symlink('../store/card', join(root, 'projects/card'));
    const { projects } = await loadWorkspace(join(root, 'projects'));
    expect(projects.map(faultsOf)).toEqual([[]]);
  });
});
