import { describe, expect, it } from 'vitest';
import type { Edition, Editions } from '../../src/edition/editions.ts';
import { sheetWith } from '../../src/proof/example.ts';
import type { Finding } from '../../src/proof/finding.ts';
import { proofConverted, proofProject, proofWorkspace } from '../../src/proof/proof.ts';
import type { AnyRule, Rule } from '../../src/proof/rule.ts';
import { rules } from '../../src/proof/rules/index.ts';
import { buildShapes } from '../../src/shape/build.ts';
import type { Shapes } from '../../src/shape/shapes.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { workspaceOf } from './workspace.ts';

const NOTHING: Shapes = { nets: new Map(), layers: [], problems: [] };

function ruleThat(id: Rule['id'], check: NonNullable<Rule['check']>): AnyRule {
  return { ...rules[id], severity: 'warning', check };
}

function proofWith(...chosen: AnyRule[]): Finding[] {
  const workspace = workspaceOf(sheetWith({}));
  return workspace.projects.flatMap((project) => proofProject(workspace, project, NOTHING, chosen));
}

describe('the proof', () => {
  it('goes on when a rule breaks, and says which', () => {
    const breaks = ruleThat('corner-overhang', ({ report }) => {
      report({ message: 'said before' });
      throw new TypeError('x is not y');
    });
    const works = ruleThat('thin-reveal', ({ report }) => report({ message: 'said after' }));
    expect(proofWith(breaks, works)).toMatchObject([
      { rule: 'corner-overhang', severity: 'warning', message: 'said before' },
      { rule: 'internal', severity: 'error', message: 'the rule corner-overhang broke: x is not y' },
      { rule: 'thin-reveal', severity: 'warning', message: 'said after' },
    ]);
  });

  it('sorts by place, those without one first, and says nothing twice', () => {
    const wild = ruleThat('turned-layer', ({ project: { file }, report }) => {
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

  it('says what only the converted edition has, in its own unit', () => {
    const edition = (unit: string, front: string, label: string): Edition => {
      const pieces = `card: { stock: cream, cut: ${unit === 'in' ? '4 x 5' : '100 x 125'} }\nfront: { stock: cream, cut: ${front}, on: card }\nlabel: { stock: cream, cut: ${label}, on: card }`;
      const body = '## Do it\nStick :piece[front], 9 in wide.\n';
      const [project] = workspaceOf(sheetWith({ unit, pieces, body })).projects;
      if (!project) throw new Error('no project');
      return { project, shapes: buildShapes(project) };
    };
    const inch = edition('in', '3 3/4 x 4 3/4', '4 1/4 x 1');
    const metric = edition('mm', '101 x 119', '108 x 25');
    const workspace = workspaceOf(sheetWith({}));
    const found = (editions: Editions): string[] =>
      proofConverted(workspace, editions).map(({ message }) => message);
    expect(found({ own: 'inch', inch, metric })).toContain(
      'in the metric edition front is 101 mm wide, 1 mm more than card (100 mm)',
    );
    expect(found({ own: 'inch', inch, metric }).filter((message) => /9 in|no step/u.test(message))).toEqual(
      [],
    );
    expect(found({ own: 'inch', inch, metric: inch })).toEqual([]);
    const at = { file: metric.project.file, start: 1, end: 2 };
    const problems = [{ rule: 'unknown-reference', message: 'no panel is named so', at }];
    const shapes = { ...metric.shapes, problems };
    expect(proofConverted(workspace, { own: 'inch', inch, metric: { ...metric, shapes } })).toContainEqual(
      expect.objectContaining({
        rule: 'unknown-reference',
        message: 'in the metric edition no panel is named so',
      }),
    );
    expect(found({ own: 'metric', inch, metric: inch })).toEqual([]);
  });
});
