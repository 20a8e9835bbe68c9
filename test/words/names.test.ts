import { describe, expect, it } from 'vitest';
import { readRef } from '../../src/project/ref.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { baseName, nameOf, partName, partNamed, pieceSheetNamed, sheetNamed } from '../../src/words/names.ts';
import { voiceOf } from '../../src/words/voice.ts';
import { labels, sampleOf } from '../handout/sample.ts';

const voice = voiceOf(labels);
const { say } = voice;

const { editions } = sampleOf(`
unit: in
pieces:
  strip:
    cut: 4 x 3
    score: [{ from: left, at: [1, 2, 3] }, { from: top, at: [1, 2] }]
    panels: { front: B2 }
`);
const net = ownNet(editions.inch.shapes.nets, 'strip');

describe('a panel', () => {
  it.each([
    ['front', 'front'],
    ['A2', 'A2'],
    ['side-tab', 'side tab'],
  ])('%s is %s as on the drawing, and the same as markup', (id, words) => {
    if (!net) throw new Error('the strip has no net');
    expect(partName(net, id, voice).text).toBe(words);
    expect(partName(net, id, voice).toString()).toBe(`<b class="piece">${words}</b>`);
  });
});

describe('a name', () => {
  it.each([
    ['seed-box', 'seed box'],
    ['seed_box', 'seed box'],
    ['a--b__c', 'a b c'],
    ['box', 'box'],
  ])('%s is read %s', (id, words) => {
    expect(nameOf(id)).toBe(words);
  });

  it.each([
    ['tab', 'tab'],
    ['lid-front', 'lid front'],
    ['page-12', 'page 12'],
    ['my-own-3', 'my own 3'],
  ])('of the part %s is %s', (id, words) => {
    expect(partNamed(id, say)).toBe(words);
  });

  it.each([
    ['seed-box', undefined, 'seed box'],
    ['seed-box', 'lid', 'seed box lid'],
    ['box', 'page-2', 'box page 2'],
  ])('of the piece %s, sheet %s', (piece, sheet, words) => {
    expect(pieceSheetNamed(piece, sheet, say)).toBe(words);
    expect(sheetNamed(sheet === undefined ? piece : `${piece}.${sheet}`, say)).toBe(words);
  });

  it.each([
    ['box', { piece: 'box', face: 'outside' }, 'box'],
    ['box.front', { piece: 'box', part: 'front', face: 'outside' }, 'front of the box'],
    ['pot.wall-5', { piece: 'pot', part: 'wall-5', face: 'outside' }, 'pot, wall 5'],
    ['box.lid.front', { piece: 'box', part: 'lid.front', face: 'outside' }, 'lid.front of the box'],
    ['inside box.front', { piece: 'box', part: 'front', face: 'inside' }, 'inside of the front of the box'],
  ])('%s as a person writes it', (written, base, words) => {
    expect(readRef(written)).toEqual(base);
    expect(baseName(readRef(written), voice).toString()).toContain(words);
  });
});
