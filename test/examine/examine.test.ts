import { describe, expect, it } from 'vitest';
import { examine, findingsOf } from '../../src/examine/examine.ts';
import type { Study } from '../../src/examine/study.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';

const sheet = (cut: string, rest = ''): string =>
  `---\ntitle: Card\nmeasurements:\n  unit: in\n  stock: { cream: { sheet: 12 x 12 } }\n  pieces:\n    card: { stock: cream, cut: ${cut} }\n---\n## Cut :piece[card]\n${rest}`;

type Texts = Readonly<Record<string, string>>;

const TEXTS: Texts = {
  'site.yaml': 'title: Bench\n',
  'shared/tools.yaml': 'supplies: { knife: { item: Knife, kind: tool } }\n',
  'a/sheet.md': sheet('4 x 5'),
  'b/sheet.md': sheet('3 x 4'),
  'b/revisions.yaml': 'revisions: []\n',
};

function studiesOf(texts: Texts): readonly Study[] {
  return examine(readWorkspaceFromTexts(texts));
}

describe('examining a workspace', () => {
  it('looks at nothing again that reads as before', () => {
    const [a, b] = studiesOf(TEXTS);
    const [a2, b2] = studiesOf({ ...TEXTS });
    expect(a2).toBe(a);
    expect(b2).toBe(b);
  });

  it.each<[string, Texts, readonly [boolean, boolean]]>([
    ['its sheet', { 'b/sheet.md': sheet('3 x 4', 'More.\n') }, [true, false]],
    ['its ledger', { 'b/revisions.yaml': 'revisions: []\n# again\n' }, [true, false]],
    ['the settings', { 'site.yaml': 'title: Another bench\n' }, [false, false]],
    [
      'a shared file',
      { 'shared/tools.yaml': 'supplies: { knife: { item: Knives, kind: tool } }\n' },
      [false, false],
    ],
    ['a project beside it', { 'c/sheet.md': sheet('2 x 2') }, [true, true]],
    ['a project of the same address', { 'A!/sheet.md': sheet('2 x 2') }, [false, true]],
  ])('looks again where %s has changed', (_, change, [aIsKept, bIsKept]) => {
    const before = studiesOf(TEXTS);
    const after = studiesOf({ ...TEXTS, ...change });
    const kept = ['a', 'b'].map((folder) => {
      const at = ({ project }: Study): boolean => project.folder === folder;
      return after.find(at) === before.find(at);
    });
    expect(kept).toEqual([aIsKept, bIsKept]);
  });

  it('looks again where a picture has gone', () => {
    const withPicture = { ...TEXTS, 'a/sheet.md': sheet('4 x 5', '![Flat](photos/flat.jpg)\n') };
    const there = studiesOf({ ...withPicture, 'a/photos/flat.jpg': 'a picture' });
    const gone = studiesOf(withPicture);
    expect(gone[0]).not.toBe(there[0]);
    expect(gone[1]).toBe(there[1]);
    expect(gone[0]?.findings.map(({ rule }) => rule)).toContain('missing-picture');
  });

  it('stops at no project on which we break, and says on which', () => {
    const workspace = readWorkspaceFromTexts({ ...TEXTS, 'a/sheet.md': sheet('5 x 6') });
    const [first, ...others] = workspace.projects;
    if (!first) throw new Error('no project');
    const stock = {
      get: () => {
        throw new TypeError('x is not y');
      },
    } as never;
    const broken = { ...first, content: 'broken', stock };
    const studies = examine({ ...workspace, projects: [broken, ...others] });
    const told = mergeFindings(findingsOf(workspace, studies));
    const mistakes = told.filter(({ rule }) => rule === 'internal');
    expect(new Set(mistakes.map(({ at }) => at.file.path))).toEqual(new Set(['a/sheet.md']));
    expect(mistakes[0]?.message).toContain('x is not y');
    expect(studies[1]?.findings).toEqual([]);
  });
});
