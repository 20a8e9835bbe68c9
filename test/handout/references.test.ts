import { describe, expect, it } from 'vitest';
import { renderMarkdown } from '../../src/handout/markdown.ts';
import { proseSetting } from '../../src/handout/steps.ts';
import type { Workspace } from '../../src/project/model.ts';
import { proofProject } from '../../src/proof/proof.ts';
import { hollowReference } from '../../src/proof/rules/hollow-reference.ts';
import { noSuchView } from '../../src/proof/rules/no-such-view.ts';
import { unexpectedValue } from '../../src/proof/rules/unexpected-value.ts';
import { unknownReference } from '../../src/proof/rules/unknown-reference.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { parseMarkup, textOf } from './markup.ts';
import { sample, settingFor } from './sample.ts';

/** Pieces of every sort: flat, lying on a piece, on a panel; scored, cut, glued; of one form and of two sheets. */
const HEAD = `---
title: A sample
measurements:
  unit: in
  pieces:
    card:  { cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }], panels: { front: B1 } }
    front: { cut: 4 x 5 1/4, on: card.front }
    strip: { cut: 3 x 1, on: front }
    note:  { cut: 2 x 3, count: 4 }
    tag:   { form: tag, size: 1 1/2 x 3 }
    box:   { form: tuck-end box, inside: 2 x 1 x 3 }
    tray:  { form: lidded tray, inside: 3 x 2 x 1 }
---
`;
const KNOWN = [
  'card',
  'card.front',
  'card.A1',
  'front',
  'strip',
  'note',
  'tag',
  'tag.tag',
  'box',
  'box.front',
].concat(['tray', 'tray.lid', 'tray.top']);
const UNKNOWN = ['nothing', 'card.nothing', 'tray.base'];
const KINDS = ['piece', 'size', 'scores', 'reveal', 'count', 'trims', 'assembly'];
const VIEWS = [
  '',
  ' view=flat',
  ' view=folded',
  ' view=layers',
  ' view=fold-1',
  ' view=fold-2',
  ' view=fold-7',
].concat([' view=fold-8', ' view=fold-0', ' view=fold-01', ' view=nonsense', ' view']);

const written = (names: readonly string[]): string[] => [
  ...KINDS.flatMap((kind) => names.map((name) => `:${kind}[${name}]`)),
  ...names.flatMap((name) => VIEWS.map((view) => `::drawing{of=${name}${view}}`)),
];

/** The rules that speak of a directive with nothing to say. */
const RULES = {
  'hollow-reference': hollowReference,
  'unknown-reference': unknownReference,
  'no-such-view': noSuchView,
  'unexpected-value': unexpectedValue,
};

const workspaceOf = (body: string): Workspace =>
  readWorkspaceFromTexts({ 'sample/sheet.md': `${HEAD}${body}\n` });

const shapes = buildShapes(sample(HEAD).project);

function faultsOf(body: string): readonly string[] {
  const workspace = workspaceOf(body);
  return workspace.projects
    .flatMap((project) => proofProject(workspace, project, shapes, RULES))
    .filter(({ rule }) => rule in RULES)
    .map(({ rule, at }) => `${rule}: ${at?.file.text.slice(at.start, at.end)}`);
}

const setting = settingFor(sample(HEAD), 'page');

function rendered(body: string): string {
  const [project] = workspaceOf(body).projects;
  if (!project) throw new Error('the sample has no project');
  return renderMarkdown(project.introduction.nodes, proseSetting({ ...setting, project }, 2)).toString();
}

const RAW = /:\w+\[|::|\{of/u;

describe('a directive', () => {
  it.each(written(KNOWN))('%s has something to say, or else the proof says that it has not', (directive) => {
    const html = rendered(directive);
    const name = /[[=]([\w.]+)/u.exec(directive)?.[1] ?? '';
    const isHollow = html === '' || html === `<p>${name}</p>`;
    expect(faultsOf(directive)).toHaveLength(isHollow ? 1 : 0);
    expect(textOf(parseMarkup(html))).not.toMatch(RAW);
  });

  it.each(written(UNKNOWN))('%s names nothing, which the proof says', (directive) => {
    expect(faultsOf(directive)).toEqual([expect.stringMatching(/^unknown-reference: (?:nothing|base)$/u)]);
    expect(textOf(parseMarkup(rendered(directive)))).not.toMatch(RAW);
  });
});

describe('a list', () => {
  it.each(['*:trims[box]*', '### Cut :trims[box]', '| a |\n|--|\n| :assembly[box] |', '[:trims[box]](x/)'])(
    'needs a paragraph: %s',
    (body) => {
      expect(faultsOf(body)).toEqual([expect.stringMatching(/^unexpected-value: :\w+\[box\]$/u)]);
      expect(rendered(body)).not.toMatch(/:\w+\[/u);
    },
  );

  it.each(['Then :trims[box] and fold.', '- :assembly[box]', '> :trims[box]', ':::tip\n:trims[box]\n:::'])(
    'has one: %s',
    (body) => {
      expect(faultsOf(body)).toEqual([]);
      expect(rendered(body)).toMatch(/<[ou]l class="said">/u);
    },
  );
});
