import { describe, expect, it } from 'vitest';
import { readWorkspaceFromTexts } from '../../src/project/from-texts.ts';
import { sheetWith } from '../../src/proof/example.ts';
import type { Finding } from '../../src/proof/finding.ts';
import { proofProject, proofWorkspace } from '../../src/proof/proof.ts';
import type { Rule } from '../../src/proof/rule.ts';
import { rules } from '../../src/proof/rules/index.ts';
import { buildShapes } from '../../src/shape/build.ts';
import type { Shapes } from '../../src/shape/shapes.ts';
import { workspaceOf } from './workspace.ts';

const NOTHING: Shapes = { nets: new Map(), layers: [], problems: [] };

function ruleThat(id: string, check: NonNullable<Rule['check']>): Rule {
  const example = { sheet: '' };
  return { id, severity: 'warning', summary: '', why: '', fails: example, passes: example, check };
}

function proofWith(...chosen: Rule[]): Finding[] {
  const workspace = workspaceOf(sheetWith({}));
  return workspace.projects.flatMap((project) => proofProject(workspace, project, NOTHING, chosen));
}

describe('the proof', () => {
  it('goes on when a rule breaks, and says which', () => {
    const breaks = ruleThat('breaks', ({ report }) => {
      report({ message: 'said before' });
      throw new TypeError('x is not y');
    });
    const works = ruleThat('works', ({ report }) => report({ message: 'said after' }));
    expect(proofWith(breaks, works)).toMatchObject([
      { rule: 'breaks', severity: 'warning', message: 'said before' },
      { rule: 'internal', severity: 'error', message: 'the rule breaks broke: x is not y' },
      { rule: 'works', severity: 'warning', message: 'said after' },
    ]);
  });

  it('sorts by place, those without one first, and says nothing twice', () => {
    const wild = ruleThat('wild', ({ project: { file }, report }) => {
      report({ message: 'late', at: { file, start: 9, end: 12 } });
      report({ message: 'early', at: { file, start: 2, end: 3 } });
      report({ message: 'nowhere' });
      report({ message: 'early', at: { file, start: 2, end: 3 } });
      report({ message: 'early, otherwise', at: { file, start: 2, end: 3 }, severity: 'error' });
    });
    const findings = proofWith(wild);
    expect(findings.map(({ message }) => message)).toEqual(['nowhere', 'early', 'early, otherwise', 'late']);
    expect(findings.map(({ severity }) => severity)).toEqual(['warning', 'warning', 'error', 'warning']);
    expect(findings[0]).toMatchObject({ file: 'card/sheet.md', notes: [] });
  });

  it('gives each problem of shape to the rule it names', () => {
    const workspace = workspaceOf(sheetWith({}));
    const [project] = workspace.projects;
    if (!project) throw new Error('no project');
    const at = { file: project.file, start: 0, end: 3 };
    const note = { message: 'there', at };
    const problems = [
      { rule: 'score-order', message: 'first', remedy: 'mend it', at, notes: [note] },
      { rule: 'no-such-rule', message: 'second', at },
    ];
    expect(proofProject(workspace, project, { ...NOTHING, problems })).toMatchObject([
      { rule: 'internal', severity: 'error', message: 'no rule is named no-such-rule: second' },
      { rule: 'score-order', severity: 'warning', message: 'first', remedy: 'mend it', notes: [note] },
    ]);
  });

  it('says a fault that no rule owns, rather than nothing', () => {
    const workspace = workspaceOf('');
    const findings = workspace.projects.flatMap((project) => proofProject(workspace, project, NOTHING, []));
    expect(findings).toMatchObject([
      { rule: 'internal', message: 'no rule speaks for a fault of kind empty-file' },
    ]);
  });

  it('says once what is wrong in a file that several projects use', () => {
    const uses = sheetWith({ pieces: 'card: { stock: shared.moss, cut: 3 x 4 }' });
    const workspace = readWorkspaceFromTexts({
      'site.yaml': 'titel: Bench\n',
      'shared/paper.yaml': 'stock:\n  moss: { sheet: 8 1/0 x 11 }\n',
      'one/sheet.md': uses,
      'two/sheet.md': uses,
    });
    const findings = proofWorkspace(workspace, buildShapes);
    expect(findings.map(({ rule, at }) => `${rule} ${at?.file.path}`)).toEqual([
      'unreadable-length shared/paper.yaml',
      'unknown-key site.yaml',
    ]);
  });

  it('has a project with an error beside one without', () => {
    const workspace = readWorkspaceFromTexts({
      'bad/sheet.md': sheetWith({ pieces: 'card: { stock: cream, cut: 1/0 x 4 }' }),
      'good/sheet.md': sheetWith({ pieces: 'card: { stock: cream, cut: 3 x 4 }' }),
    });
    expect(proofWorkspace(workspace, buildShapes).map(({ at }) => at?.file.path)).toEqual(['bad/sheet.md']);
  });

  it('has the rules it is made of', () => {
    expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
    expect(rules.some(({ id }) => id === 'internal')).toBe(false);
  });
});
