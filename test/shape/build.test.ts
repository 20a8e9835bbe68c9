import { describe, expect, it } from 'vitest';
import { ownNet } from '../../src/shape/sheets.ts';
import { blamed, findingsOf } from '../proof/workspace.ts';
import { shapesOf, sheetOf } from './boxes.ts';

const problemsOf = (box: string): string[] =>
  findingsOf(sheetOf(box))
    .filter(({ severity }) => severity === 'error')
    .map((finding) => `${finding.rule} at "${blamed(finding)}": ${finding.message} — ${finding.remedy}`);

describe('a form', () => {
  it('becomes the piece’s net', () => {
    const { nets, findings } = shapesOf(sheetOf('\n  form: clip-top box\n  inside: 3 1/2 x 1 x 4 3/4'));
    expect(findings).toEqual([]);
    expect(ownNet(nets, 'box')?.panels.map(({ id }) => id)).toContain('front');
  });

  it('that is not there is reported with the nearest', () => {
    expect(problemsOf('\n  form: clip top box\n  inside: 3 x 1 x 4')).toEqual([
      'unknown-reference at "clip top box": there is no form "clip top box" — write "clip-top box"',
    ]);
  });

  it('takes no setting it does not know', () => {
    expect(problemsOf('\n  form: tray\n  inside: 3 x 2 x 1\n  tap: 1/2')).toEqual([
      'unknown-key at "tap": "tap" is not a setting of box — write "tab"',
    ]);
  });

  it('suggests the keys of every piece too', () => {
    expect(problemsOf('\n  form: envelope\n  card: 6 x 4\n  cornes: 1/8')).toEqual([
      'unknown-key at "cornes": "cornes" is not a setting of box — write "corners"',
    ]);
  });

  it('is asked for one of its choices', () => {
    const [problem] = problemsOf('\n  form: tuck-end box\n  inside: 3 x 1 x 4\n  ends: straigt');
    expect(problem).toMatch(/^unexpected-value at "straigt": .* — write straight or reverse$/u);
  });

  it('misses what it cannot do without', () => {
    expect(problemsOf('\n  form: belly band')).toEqual([
      'missing-value at "box": box has no "around:" or "inside:" — add "around:" or "inside:"',
    ]);
  });
});
