import { describe, expect, it } from 'vitest';
import { cautionsFor } from '../../src/handout/cautions.ts';
import { voiceOf } from '../../src/words/voice.ts';
import { labels, type Sample, sampleOf } from './sample.ts';

const voice = voiceOf(labels);
const PIECE = 'unit: in\npieces:\n  tag: { cut: 2 x 6 }\n';

function called(from: Sample): string[] {
  return cautionsFor(from.project, voice).map(({ id }) => id);
}

function calledBy(supply: string): string[] {
  return called(sampleOf(PIECE, '', `supplies:\n  - { ${supply} }\n`)).filter((id) => id !== 'blades');
}

describe('cautions', () => {
  it('are about blades wherever something is cut', () => {
    expect(called(sampleOf(PIECE))).toEqual(['blades']);
    expect(called(sampleOf('unit: in'))).toEqual([]);
  });

  /** Which supplies call for which caution: common practice, no source. */
  it.each([
    ['item: Hot glue gun, kind: tool', ['hot-glue']],
    ['item: Tape, kind: adhesive, instead: "hot glue, sparingly"', ['hot-glue']],
    ['item: Heat tool, kind: tool', ['heat']],
    ['item: Craft iron, kind: tool', ['heat']],
    ['item: Fern die, kind: die', ['press']],
    ['item: Die-cutting press, kind: tool', ['press']],
    ['item: Spray adhesive, kind: adhesive', ['solvents']],
    ['item: Clear fixative, kind: other', ['solvents']],
    ['item: Tea light, kind: filling', ['flames']],
    ['item: Battery tea light, kind: filling', []],
    ['item: LED candle, kind: filling', []],
    ['item: Brass brads, kind: embellishment', ['small-parts']],
    ['item: Small magnets, kind: other', ['small-parts']],
    ['item: Satin ribbon, kind: embellishment', []],
    ['item: Paper trimmer, kind: tool', []],
    ['item: Yellow highlighter, kind: ink', []],
    ['item: Glue roller, kind: adhesive', []],
    ['item: Embossing folder, kind: tool', []],
    ['item: Matching cardstock scraps, kind: other', []],
  ])('are called for by { %s }', (supply, ids) => {
    expect(calledBy(supply)).toEqual(ids);
  });

  it('name the allergens of what is held, and speak of food', () => {
    const held = sampleOf(`${PIECE}holds: { item: shortbread, food: yes, allergens: [milk, wheat] }`);
    const cautions = cautionsFor(held.project, voice);
    expect(cautions.map(({ id }) => id)).toEqual(['blades', 'food', 'allergens']);
    expect(cautions.at(-1)?.text).toContain('milk and wheat');
  });

  it('each say something, and defer to maker and local rules once', () => {
    const all = [
      'blades',
      'hot-glue',
      'heat',
      'press',
      'solvents',
      'flames',
      'small-parts',
      'food',
      'allergens',
    ];
    for (const id of all) expect(voice.say(`caution-${id}-text`).length).toBeGreaterThan(60);
    expect(voice.say('cautions-defer')).toMatch(/maker’s instructions.*local rules/u);
  });
});
