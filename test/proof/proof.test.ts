import { describe, expect, it } from 'vitest';
import { examine, findingsOf } from '../../src/examine/examine.ts';
import type { Finding } from '../../src/project/finding.ts';
import type { Project, Workspace } from '../../src/project/model.ts';
import { startOf } from '../../src/project/source.ts';
import { proofProject } from '../../src/proof/proof.ts';
import type { Rules } from '../../src/proof/rule.ts';
import { rules } from '../../src/proof/rules/index.ts';
import { mergeFindings, tellFinding } from '../../src/proof/tell.ts';
import type { Told } from '../../src/proof/told.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { forms } from '../../src/shape/forms/index.ts';
import type { Shapes } from '../../src/shape/shapes.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { sheetWith } from './sheet-with.ts';
import { workspaceOf } from './workspace.ts';

const NOTHING: Shapes = { nets: new Map(), layers: [], findings: [] };

function proofWith(chosen: Partial<Rules>): readonly Told[] {
  const workspace = workspaceOf(sheetWith({}));
  return mergeFindings(
    workspace.projects.flatMap((project) => proofProject(workspace, project, NOTHING, chosen)),
  );
}

describe('the proof', () => {
  it('goes on when a rule breaks, and says which', () => {
    const breaks: Rules['missing-picture'] = {
      ...rules['missing-picture'],
      *check({ project: { file } }) {
        yield { at: startOf(file), facts: { path: 'found before' } };
        throw new TypeError('x is not y');
      },
    };
    const works: Rules['unsafe-content'] = {
      ...rules['unsafe-content'],
      check: ({ project: { file } }) => [{ at: startOf(file), facts: { what: 'HTML' } }],
    };
    expect(proofWith({ 'missing-picture': breaks, 'unsafe-content': works })).toMatchObject([
      { rule: 'internal', severity: 'error', message: 'the rule missing-picture broke: x is not y' },
      { rule: 'missing-picture', message: expect.stringContaining('found before') },
      {
        rule: 'unsafe-content',
        severity: 'warning',
        message: 'HTML is not allowed in a sheet and is shown as plain text',
      },
    ]);
  });

  it('says so when a rule has no words for what was found', () => {
    const { file } = one(workspaceOf(sheetWith({})));
    const at = { file, start: 4, end: 9 };
    const broken = { rule: 'missing-label', at, facts: { language: 'de', keys: undefined } };
    expect(tellFinding(broken as unknown as Finding)).toMatchObject({
      rule: 'internal',
      message: expect.stringMatching(/^the rule missing-label broke: /u),
      at,
    });
  });

  it('goes on with the other pieces when one form breaks', () => {
    const pieces = 'box: { stock: cream, form: tray, inside: 3 x 4 x 1 }\ntag: { stock: cream, cut: 2 x 3 }';
    const breaking = forms.map((form) => ({
      ...form,
      build: () => {
        throw new TypeError('x is not y');
      },
    }));
    const { nets, findings } = buildShapes(one(workspaceOf(sheetWith({ pieces }))), breaking);
    expect([...nets.keys()]).toEqual(['tag']);
    expect(mergeFindings(findings)).toMatchObject([
      { rule: 'internal', severity: 'error', message: 'the form tray of box broke: x is not y' },
    ]);
  });

  it('sorts by place, what is said of the whole file first, and says nothing twice', () => {
    const { file } = one(workspaceOf(sheetWith({})));
    const said = (what: 'HTML' | 'link' | 'link in prose', start: number, end: number): Finding => ({
      rule: 'unsafe-content',
      at: { file, start, end },
      facts: { what },
    });
    const findings = mergeFindings([
      said('HTML', 9, 12),
      said('link', 2, 3),
      { ...said('HTML', 0, 0), at: startOf(file) },
      said('link', 2, 3),
      said('link in prose', 2, 3),
      { rule: 'not-text', at: { file, start: 2, end: 3 }, facts: {} },
    ]);
    expect(findings.map(({ message }) => message.replace(/ (?:is not allowed|links work).*/u, ''))).toEqual([
      'HTML',
      'the file is no plain text',
      'only http and https',
      'only http, https and mailto',
      'HTML',
    ]);
    expect(findings.map(({ severity }) => severity)).toEqual([
      'warning',
      'error',
      'warning',
      'warning',
      'warning',
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
    const findings = mergeFindings(findingsOf(workspace, examine(workspace)));
    expect(findings.map(({ rule, at }) => `${rule} ${at.file.path}`)).toEqual([
      'unreadable-length shared/paper.yaml',
      'unknown-key site.yaml',
    ]);
  });

  it('has a project with an error beside one without', () => {
    const workspace = readWorkspaceFromTexts({
      'bad/sheet.md': sheetWith({ pieces: 'card: { stock: cream, cut: 1/0 x 4 }' }),
      'good/sheet.md': sheetWith({ pieces: 'card: { stock: cream, cut: 3 x 4 }' }),
    });
    expect(findingsOf(workspace, examine(workspace)).map(({ at }) => at.file.path)).toEqual(['bad/sheet.md']);
  });
});

function one({ projects: [project] }: Workspace): Project {
  if (!project) throw new Error('no project');
  return project;
}
