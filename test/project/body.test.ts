import { toString as plainText } from 'mdast-util-to-string';
import { describe, expect, it } from 'vitest';
import type { Project } from '../../src/project/model.ts';
import { everyNode } from '../../src/project/prose/markdown.ts';
import { writeRef } from '../../src/project/ref.ts';
import { blamed, faultsOf, from, readSheet, sheetOf } from './reading.ts';

function bodyOf(body: string, pieces = '{ box: { cut: 3 x 4 }, front: { cut: 2 x 3, on: box } }'): Project {
  return readSheet(sheetOf(`pieces: ${pieces}`, body));
}

/** Every text of the introduction, joined, as a reader sees it. */
function shown(project: Project): string {
  return project.introduction.nodes.map((node) => plainText(node)).join('\n');
}

describe('steps', () => {
  it('are the headings of the second level', () => {
    const project = bodyOf('# Box\nHello.\n\n## One\n### Detail\nText.\n\n## Two\n');
    expect(project.steps.map(({ title }) => from(title))).toEqual(['One from One', 'Two from Two']);
    expect(project.steps[0]?.prose.nodes.map(({ type }) => type)).toEqual(['heading', 'paragraph']);
    expect(shown(project)).toBe('Box\nHello.');
  });

  it('are not found inside quotations or lists', () => {
    expect(bodyOf('> ## Not a step\n\n- ## Nor this\n').steps).toEqual([]);
  });

  it.each<[string, number | undefined, boolean, number | undefined]>([
    [':step{minutes=10 ahead}', 10, true, undefined],
    [':step{minutes="10" ahead=yes dry=5}', 10, true, 5],
    [':step{dry=30 ahead=no}', undefined, false, 30],
    [':step{minutes="90 min" dry=12h}', 90, false, 720],
    [':step{minutes=1h30 dry="2 hours"}', 90, false, 120],
    ['', undefined, false, undefined],
  ])('%j', (attributes, minutes, ahead, dry) => {
    const project = bodyOf(`## Glue it ${attributes}\n`);
    const [step] = project.steps;
    expect(faultsOf(project)).toEqual([]);
    expect([step?.minutes?.value, step?.ahead, step?.dry?.value]).toEqual([minutes, ahead, dry]);
    expect(step?.title.value).toBe('Glue it');
    expect(step?.heading).toMatchObject([{ type: 'text', value: 'Glue it' }]);
  });

  it('have the place of each number', () => {
    const [step] = bodyOf('## Glue it :step{minutes="10" dry=5}\n').steps;
    expect([from(step?.minutes), from(step?.dry)]).toEqual(['10 from 10', '5 from 5']);
  });

  it.each<[string, string]>([
    ['## A :step{minutes=ten}', 'unexpected-value: ten'],
    ['## A :step{minutes=0}', 'unexpected-value: 0'],
    ['## A :step{dry=12hm}', 'unexpected-value: 12hm'],
    ['## A :step{dry=999h}', 'unexpected-value: 999h'],
    ['## A :step{dry=-1}', 'unexpected-value: -1'],
    ['## A :step{ahead=maybe}', 'unexpected-value: maybe'],
    ['## A :step{minute=10}', 'unknown-key: minute'],
    ['## A :step{minutes=10 __proto__=1}', 'unknown-key: __proto__'],
    ['## A :step{__proto__=1}', 'unknown-directive: :step{__proto__=1}'],
    ['## A :step{minutes=1} :step{dry=2}', 'unexpected-value: :step{dry=2}'],
    ['### A :step{minutes=1}', 'unexpected-value: :step{minutes=1}'],
    ['Text :step{minutes=1}', 'unexpected-value: :step{minutes=1}'],
    ['## :step{minutes=1}', 'unexpected-value: ## :step{minutes=1}'],
  ])('%s', (body, fault) => {
    expect(faultsOf(bodyOf(body))).toEqual([fault]);
  });

  it('never show their settings', () => {
    const project = bodyOf('Text :step{minutes=1} more.\n\n## A :step{ahead}\n');
    expect([...everyNode(project.body)].some((node) => node.type === 'textDirective')).toBe(false);
    expect(shown(project)).toBe('Text  more.');
  });
});

describe('references', () => {
  it('of every kind, with their names and places', () => {
    const kinds = ['piece', 'size', 'scores', 'reveal', 'count', 'trims', 'assembly'];
    const project = bodyOf(kinds.map((kind) => `:${kind}[box]`).join(' '));
    expect(project.introduction.references.map(({ kind, of }) => [kind, from(of)])).toEqual(
      kinds.map((kind) => [kind, 'box from box']),
    );
  });

  it.each<[string, string, string | undefined]>([
    ['::drawing{of=box view=flat}', 'box', 'flat'],
    ['::drawing{view="fold-2" of="box"}', 'box', 'fold-2'],
    ["::drawing[The box]{of='box'}", 'box', undefined],
    ['::drawing{of=box.front view=of}', 'box.front', 'of'],
  ])('%s', (body, name, view) => {
    const project = bodyOf(body);
    expect(faultsOf(project)).toEqual([]);
    const [drawing, ...others] = project.introduction.references;
    expect([drawing?.kind, drawing?.view?.value, others]).toEqual(['drawing', view, []]);
    expect(from(drawing?.of)).toBe(`${name} from ${name}`);
  });

  it.each<[string, string]>([
    ['::drawing', 'unexpected-value: ::drawing'],
    ['::drawing{view=flat}', 'unexpected-value: ::drawing{view=flat}'],
    ['::drawing{of=box veiw=flat}', 'unknown-key: veiw'],
    [':piece[box]{bold}', 'unknown-key: bold'],
    [':::tip{wide}\nText\n:::', 'unknown-key: wide'],
  ])('%s', (body, fault) => {
    expect(faultsOf(bodyOf(body))).toEqual([fault]);
  });

  it('are found in headings, tips, lists, tables and link texts', () => {
    const body = [
      '## The :piece[box]',
      ':::host\n- Take :piece[front]\n:::',
      '| a |\n| - |\n| :size[front] |',
      '[see :piece[box]](https://example.org)',
    ].join('\n\n');
    const names = bodyOf(body).steps[0]?.prose.references.map(({ of }) => writeRef(of.value));
    expect(names).toEqual(['box', 'front', 'front', 'box']);
  });
});

describe('pictures', () => {
  it('are those that are shown: none of what is for the demonstrator alone', () => {
    const body = [
      '![Seen](seen.jpg)',
      ':::host\n![Mine](mine.jpg)\n\n- ![Mine too](mine-too.jpg)\n:::',
      ':::tip\n![Seen too](seen-too.jpg)\n:::',
    ].join('\n\n');
    const { pictures } = bodyOf(body).introduction;
    expect(pictures.map(({ path }) => path.value)).toEqual(['seen.jpg', 'seen-too.jpg']);
  });
});

describe('what only looks like a directive stays text, exactly as typed', () => {
  it.each([
    'We meet at 3:15 in the hall.',
    'A smile :smile: for you.',
    'Ratio a:b and c:d:e.',
    'A :size without a name, a :piece too.',
    'See note:[1] there.',
    'Use ::two and :::three dots.',
    'Glue:hold[1] it, or not.',
    'At 12:30 (note:this) we :stop.',
  ])('%s', (text) => {
    const project = bodyOf(text);
    expect(faultsOf(project)).toEqual([]);
    expect(shown(project)).toBe(text);
    expect(project.introduction.texts.map(({ value }) => value)).toEqual([text]);
  });

  it.each([
    ['Unknown :peice[front]{x=1}.', ':peice[front]{x=1}'],
    ['::unknown{a=b}', '::unknown{a=b}'],
    ['::drawng', '::drawng'],
    [':piece [front] with a blank', ':piece [front]'],
    ['A line :step {minutes=5}', ':step {minutes=5}'],
    [':drawing{of=box} in a line', ':drawing{of=box}'],
    ['a ::drawing{of=box} in a line', '::drawing{of=box}'],
    ['| a |\n| - |\n| ::piece[box] |', '::piece[box]'],
  ])('but is named where it was meant: %s', (text, written) => {
    expect(faultsOf(bodyOf(text))).toEqual([`unknown-directive: ${written}`]);
    expect(shown(bodyOf(text))).toContain(written);
  });

  it('keeps what stands in a container nobody knows', () => {
    const project = bodyOf(':::note\nTake :piece[box].\n:::\n');
    expect(faultsOf(project)).toEqual(['unknown-directive: :::note']);
    expect(shown(project)).toBe(':::note\nTake box.\n:::');
    expect(project.introduction.references).toHaveLength(1);
  });

  it('and template syntax too', () => {
    const text = `Write {{title}} and {{{raw}}} and <%= x %> and \${y}.`;
    expect(shown(bodyOf(text))).toBe(text);
  });
});

describe('runs of text', () => {
  const texts = (body: string): string[] => bodyOf(body).introduction.texts.map(({ value }) => value);

  it('are the plain text, with the offsets of the file', () => {
    const project = bodyOf('Leave **1/8 in** round\nthe *edge*.');
    expect(project.introduction.texts.map(from)).toEqual([
      'Leave  from Leave ',
      '1/8 in from 1/8 in',
      ' round\nthe  from  round\nthe ',
      'edge from edge',
      '. from .',
    ]);
  });

  it('leave out code, names in brackets and addresses', () => {
    expect(texts('Cut `1/8 in` of :piece[box] ![2 in](a.jpg)\n\n```\n3 in\n```\n\n    4 in\n')).toEqual([
      'Cut ',
      ' of ',
      ' ',
    ]);
  });

  it('keep their offsets behind character references and escapes', () => {
    const project = bodyOf('A &amp; B \\* at 1/8 in.');
    const [run] = project.introduction.texts;
    const start = (run?.at.start ?? 0) + (run?.value.indexOf('1/8 in') ?? 0);
    expect(run && blamed({ ...run.at, start, end: start + 6 })).toBe('1/8 in');
  });

  it('join what a false directive tore apart', () => {
    expect(texts('at 3:15 cut 1/8 in')).toEqual(['at 3:15 cut 1/8 in']);
  });

  it('of a heading belong to its step', () => {
    expect(
      bodyOf('## Cut at 2 in :step{ahead}\nThen fold.\n').steps[0]?.prose.texts.map(({ value }) =>
        value.trim(),
      ),
    ).toEqual(['Cut at 2 in', 'Then fold.']);
  });
});

describe('footnotes', () => {
  it('go with the step that calls them, wherever they are written', () => {
    const project = bodyOf('## One\nA[^a].\n\n## Two\nB.\n\n[^a]: About A.\n[^b]: About B.\n');
    expect(project.steps.map(({ prose }) => prose.nodes.map(({ type }) => type))).toEqual([
      ['paragraph', 'footnoteDefinition'],
      ['paragraph'],
    ]);
  });
});
