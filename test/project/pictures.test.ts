import { describe, expect, it } from 'vitest';
import type { Project } from '../../src/project/model.ts';
import { everyNode } from '../../src/project/prose/markdown.ts';
import { faultsOf, from, readSheet, sheetOf } from './reading.ts';

function bodyOf(body: string): Project {
  return readSheet(sheetOf('unit: in', body), { 'box/photos/flat.jpg': '', 'box/my box (1).jpg': '' });
}

describe('a picture within the folder', () => {
  it.each<[string, string, string]>([
    ['![flat](photos/flat.jpg)', 'photos/flat.jpg', 'photos/flat.jpg'],
    ['![flat](photos/flat.jpg "Title")', 'photos/flat.jpg', 'photos/flat.jpg'],
    ['![flat]( <photos/flat.jpg> )', 'photos/flat.jpg', 'photos/flat.jpg'],
    ['![a [b] c](./photos/flat.jpg)', 'photos/flat.jpg', './photos/flat.jpg'],
    ['![flat](photos/../photos/flat.jpg)', 'photos/flat.jpg', 'photos/../photos/flat.jpg'],
    ['![flat](photos%2Fflat.jpg)', 'photos/flat.jpg', 'photos%2Fflat.jpg'],
    ['![flat](photos\\flat.jpg)', 'photos/flat.jpg', 'photos\\flat.jpg'],
    ['![flat](<my box (1).jpg>)', 'my box (1).jpg', 'my box (1).jpg'],
    ['![flat](my%20box%20(1).jpg)', 'my box (1).jpg', 'my%20box%20(1).jpg'],
    ['![flat][x]\n\n[x]: photos/flat.jpg', 'photos/flat.jpg', '![flat][x]'],
  ])('%s', (body, path, characters) => {
    const project = bodyOf(body);
    expect(faultsOf(project)).toEqual([]);
    expect(project.introduction.pictures.map((picture) => from(picture.path))).toEqual([
      `${path} from ${characters}`,
    ]);
    const images = [...everyNode(project.body)].filter((node) => node.type === 'image');
    expect(images.map(({ url }) => url)).toEqual([path]);
  });

  it('has its alternative, or an empty one', () => {
    const project = bodyOf('![ The *flat* box ](photos/flat.jpg) ![](photos/flat.jpg)');
    expect(project.introduction.pictures.map(({ alternative }) => alternative)).toEqual(['The flat box', '']);
  });

  it('that is not on disk is missing, and still listed', () => {
    const project = bodyOf('![x](photos/none.jpg)');
    expect(faultsOf(project)).toEqual(['missing-picture: photos/none.jpg']);
    expect(project.introduction.pictures).toHaveLength(1);
  });
});

describe('a picture outside the folder is taken out', () => {
  it.each([
    '../other/photo.jpg',
    'photos/../../x.jpg',
    '%2e%2e/x.jpg',
    '%2E%2E%2Fx.jpg',
    '..%5Cx.jpg',
    '..\\x.jpg',
    '/etc/passwd',
    '\\x.jpg',
    'C:\\x.jpg',
    'c:/x.jpg',
    'file:///x.jpg',
    'https://example.org/x.jpg',
    '//example.org/x.jpg',
    'data:image/png;base64,AAAA',
    'javascript:x',
    'photos/%00.jpg',
    '.',
    'photos/..',
    '%ff%2e%2e/x.jpg',
  ])('%s', (path) => {
    const project = bodyOf(`Before ![x](${path}) after`);
    expect(faultsOf(project)).toEqual([`outside-picture: ${path}`]);
    expect(project.introduction.pictures).toEqual([]);
    expect([...everyNode(project.body)].some(({ type }) => type === 'image')).toBe(false);
  });

  it('a lone percent sign is part of a name', () => {
    const { pictures } = bodyOf('![x](50%.jpg) ![x](%252e%252e/x.jpg)').introduction;
    expect(pictures.map(({ path }) => path.value)).toEqual(['50%.jpg', '%2e%2e/x.jpg']);
  });
});
