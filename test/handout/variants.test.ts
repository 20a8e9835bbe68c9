import { describe, expect, it } from 'vitest';
import { cutList } from '../../src/handout/cut-list.ts';
import { netViews } from '../../src/handout/drawings.ts';
import { factsOf } from '../../src/handout/facts.ts';
import { referrer } from '../../src/handout/references.ts';
import { scoreList } from '../../src/handout/score-list.ts';
import { templateFiles, templateHtml } from '../../src/handout/template-print.ts';
import { NO_REVISIONS } from '../../src/project/ledger/ledger.ts';
import type { ReferenceKind } from '../../src/project/prose/reference.ts';
import { labels, renderer, sampleOf, settingFor, sheetHtml } from './sample.ts';

const SIZES = sampleOf(
  `unit: in

stock: { moss: { sheet: 8 1/2 x 11 }, fern: { sheet: 12 x 12 } }
pieces:
  box: { stock: moss, form: clip-top box, inside: 3 x 1 1/2 x 4, tab: 1/2 }
  mat: { stock: fern, cut: 2 3/4 x 3 3/4, on: box.front }
  tag: { stock: moss, cut: 1 1/4 x 2 1/4 }
holds: { item: corm, size: 5/8 x 5/8 x 5/8, count: 20 }
variants:
  small: { box.inside: 2 x 1 x 3, mat: { cut: 1 3/4 x 2 3/4, stock: moss }, holds.count: 6 }
  large:`,
  '## Make it\nTake :piece[box], :piece[mat], :piece[tag].',
  'units: inch\n',
);
const setting = settingFor(SIZES);
const { voice, measures, editions } = setting;

describe('the sheet of a project with variants', () => {
  it('has a column for each, and once what all have alike', () => {
    const table = cutList(setting).table;
    expect(table?.variants).toEqual(['small', 'large']);
    const rows = table?.groups.flatMap(({ stock, rows: each }) =>
      each.map(({ name, cells }) => [
        stock,
        name,
        ...cells.map(({ span, cut }) => `${span}: ${cut?.lead.text ?? '–'}`),
      ]),
    );
    expect(rows).toEqual([
      ['Moss', 'box', '1: 6 1/2 × 5 in', '1: 9 1/2 × 6 3/4 in'],
      ['Moss', 'mat', '1: 1 3/4 × 2 3/4 in', '1: –'],
      ['Moss', 'tag', '2: 1 1/4 × 2 1/4 in'],
      ['Fern', 'mat', '1: –', '1: 2 3/4 × 3 3/4 in'],
    ]);
  });

  it('names them in a list where there is no room for columns', () => {
    const { groups, table } = cutList(settingFor(SIZES, 'large-print'));
    expect(table).toBeUndefined();
    const names = groups.flatMap(({ rows }) => rows.map(({ name }) => name));
    expect(names).toEqual(['box (small)', 'box (large)', 'mat (small)', 'tag', 'mat (large)']);
  });

  it('has all scores of each', () => {
    const scores = scoreList(setting)?.pieces.map(({ name, rows }) => [
      name,
      ...rows.map(({ positions }) => positions.lead.text),
    ]);
    expect(scores).toEqual([
      ['box (small)', '1, 3, 4, 6 in mountain', '1, 4 in mountain; 4 1/2 in valley'],
      ['box (large)', '1 1/2, 4 1/2, 6, 9 in mountain', '1 1/2, 5 1/2 in mountain; 6 1/4 in valley'],
    ]);
  });

  it('says in the head and in the steps what each measures', () => {
    const facts = Object.fromEntries(
      factsOf(setting, { series: [], inUs: false }).map(({ term, value }) => [term, value.text]),
    );
    expect(facts['Finished size']).toBe(
      'small 2 × 1 × 3 1/2 in, large 3 × 1 1/2 × 4 1/2 in, width\u00a0× depth\u00a0× height',
    );
    expect(facts.Holds).toBe('small 6, large 20\u00a0× corm, each 5/8 × 5/8 × 5/8 in');
    const say = (kind: ReferenceKind, name: string) => referrer(editions, measures, voice)(kind, name)?.text;
    expect(say('size', 'mat')).toBe('small 1 3/4 × 2 3/4 in, large 2 3/4 × 3 3/4 in');
    expect(say('size', 'tag')).toBe('1 1/4 × 2 1/4 in');
    expect(say('piece', 'box')).toBe('box small 6 1/2 × 5 in, large 9 1/2 × 6 3/4 in');
    expect(say('reveal', 'mat')).toBe('1/8 in');
    expect(say('scores', 'box')).toMatch(
      /^small: .*1, 3, 4, and 6 in.* large: .*1 1\/2, 4 1\/2, 6, and 9 in/u,
    );
  });

  it('draws apart what differs, under its name', () => {
    const drawings = JSON.stringify(netViews(setting).map(({ heading }) => heading));
    for (const name of ['The box (small), cut', 'The box (large), cut']) expect(drawings).toContain(name);
    const files = templateFiles(editions, 'box', labels);
    expect(files.map(({ variant }) => variant)).toEqual(['small', 'large']);
    const styles = { kind: 'inline', css: '' } as const;
    const { site } = SIZES;
    const ledger = NO_REVISIONS;
    const html = templateHtml({ editions, site, ledger, labels, paper: 'letter', styles, renderer });
    expect(html?.match(/<h1 class="unseen">[^<]*/gu)).toEqual([
      '<h1 class="unseen">box (small)',
      '<h1 class="unseen">box (large)',
    ]);
  });

  it('says every step once', () => {
    const html = sheetHtml(SIZES, 'page');
    expect(html.match(/Make it/gu)).toHaveLength(1);
    expect(html.match(/data-of="small"/gu)).toHaveLength(3);
  });
});
