import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { editionsOf } from '../../src/edition/editions.ts';
import { factsOf } from '../../src/handout/facts.ts';
import { finishedSize, mainPiece } from '../../src/handout/finished-size.ts';
import { printInches } from '../../src/measure/print.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { loadWorkspace } from '../../src/shape/workspace.ts';
import { parseMarkup, textOf } from './markup.ts';
import { sampleOf, settingFor } from './sample.ts';

const CARD = 'card: { form: single-fold card, size: 4 1/4 x 5 1/2 }';
const ENVELOPE = 'envelope: { form: envelope, card: 4 1/4 x 5 1/2 }';
const BAND = 'band: { form: belly band, around: 4 1/4 x 1/4, height: 2 }';
const TAG = 'tag: { form: tag, size: 2 x 4 }';
const NOTE = 'note: { cut: 4 x 5 1/4 }';
const LAYER = 'mat: { cut: 4 x 5 1/4, on: card.front }';
const BOX = 'box: { form: tuck-end box, inside: 4 1/2 x 1 x 5 3/4 }';

function piecesIn(lines: readonly string[], more: string): string {
  return ['unit: in', 'pieces:', ...lines.map((line) => `  ${line}`), more].join('\n');
}

const mainOf = (lines: readonly string[], more = ''): string | undefined =>
  mainPiece(sampleOf(piecesIn(lines, more)).editions)?.id.value;

describe('the main piece', () => {
  it.each<[string, readonly string[], string]>([
    ['is the card, not its envelope', [CARD, ENVELOPE], 'card'],
    ['is the card, wherever it is written', [ENVELOPE, TAG, BAND, NOTE, LAYER, CARD], 'card'],
    ['is the flat card, not the envelope for it', [ENVELOPE, NOTE], 'note'],
    ['is what folds, not a loose sheet for it', [NOTE, CARD], 'card'],
    ['is the first of two boxes or cards', [CARD, BOX], 'card'],
    ['is an envelope, if that is all there is', [ENVELOPE], 'envelope'],
    ['is the first of such things', [TAG, ENVELOPE], 'tag'],
  ])('%s', (_, lines, main) => {
    expect(mainOf(lines)).toBe(main);
  });

  it('is what holds what the project says it holds', () => {
    const holds = 'holds: { item: card, size: 4 1/4 x 5 1/2 x 1/16, count: 6 }';
    expect(mainOf([CARD, ENVELOPE, BOX], holds)).toBe('box');
    expect(mainOf([CARD, ENVELOPE], holds)).toBe('card');
  });

  it('is none where nothing could be made', () => {
    expect(mainOf(['card: { form: single-fold card, size: 4 1/0 x 5 1/2 }'])).toBeUndefined();
  });
});

describe('the finished size', () => {
  const said = (lines: readonly string[]): string => {
    const facts = factsOf(settingFor(sampleOf(piecesIn(lines, ''))), { series: [], inUs: false });
    const size = facts.find(({ term }) => term === 'Finished size');
    return textOf(parseMarkup(String(size?.value)));
  };

  it('says of which piece it is where several fold', () => {
    expect(said([CARD, NOTE])).toBe('4 1/4 × 5 1/2 in (108 × 140 mm)');
    expect(said([CARD, TAG])).toBe('4 1/4 × 5 1/2 in (108 × 140 mm)');
    expect(said([ENVELOPE, CARD])).toMatch(/^card 4 1\/4 × 5 1\/2 in \(/u);
  });

  it('says so too of several flat things', () => {
    expect(said([NOTE])).toMatch(/^4 × 5 1\/4 in \(/u);
    expect(said([NOTE, 'label: { cut: 2 x 3 }'])).toMatch(/^note 4 × 5 1\/4 in \(/u);
  });

  it('is that of the outer sheet where one goes into another', () => {
    // A sleeve and a lid go over what they are for with 1/8 in of play, as docs/forms say.
    expect(said(['box: { form: slide box, inside: 2 1/4 x 3 3/4 x 3/4 }'])).toMatch(
      /^2 3\/8 × 3 3\/4 × 7\/8 in \(.* mm\), width × depth × height$/u,
    );
    expect(said(['box: { form: lidded tray, inside: 4 x 3 x 1, lid: 1/2 }'])).toMatch(
      /^4 1\/8 × 3 1\/8 × 1 in/u,
    );
  });
});

/** Each demo project's main piece, with its size as worked out by hand from what is written in it. */
const DEMO: Readonly<Record<string, readonly [string, string]>> = {
  // Over walls of 2 1/2 in the roof rises √(1 1/2² − 1²) = 1.118 in, and the handle 1 in over that.
  'bird-seed-carrier': ['box', '3 × 2 × 4 5/8'],
  'bulb-box': ['box', '2 × 1 × 3 1/2'],
  'gate-fold-valentine': ['card', '5 1/2 × 4 1/4'],
  'lighthouse-pop-up': ['cover', '5 1/2 × 4 1/4'],
  'harbour-light-bookmark': ['base', '2 × 7'],
  'note-card-band': ['band', '4 1/2 × 1/4 × 2'],
  'paperback-bag': ['bag', '4 1/2 × 1 1/4 × 8'],
  // The flanges of the clip-top box stand 1/2 in over its 4 3/4.
  'plant-marker-box': ['box', '3 1/2 × 1 × 5 1/4'],
  'pull-out-tag': ['tag', '3 × 6'],
  'reading-list-accordion': ['card', '2 3/4 × 4 1/4'],
  'seed-packet-keeper': ['box', '3 1/2 × 1 × 5 1/4'],
  // The flange stands 3/4 in over its 4 in.
  'short-pencil-box': ['box', '3 × 1 1/4 × 4 5/8'],
  // The lid reaches 1/16 in further on each side.
  'shortbread-tray': ['box', '4 3/8 × 3 7/8 × 1'],
  // Twice a side from corner to corner, √3 times one from side to side.
  'six-sided-pencil-pot': ['pot', '3 × 2 5/8 × 4'],
  'soap-tuck-box': ['box', '2 1/2 × 1 1/4 × 3 1/2'],
  // So does the sleeve.
  'story-slide-box': ['box', '2 3/8 × 3 3/4 × 7/8'],
  'three-layer-thank-you': ['card', '4 1/4 × 5 1/2'],
  'wheat-field-card': ['card', '4 1/4 × 5 1/2'],
  'porthole-card': ['card', '4 1/4 × 5 1/2'],
  // The sheet that holds the drawing: the next sixteenths above it.
  'oak-leaf-bookmark': ['leaf', '1 9/16 × 4 1/2'],
  'plant-and-gift-tags': ['rosette', '2 × 2'],
};

describe('the demo projects', async () => {
  const root = fileURLToPath(new URL('../../projects', import.meta.url));
  const { projects } = await loadWorkspace(root);

  it.each(projects)('$slug has the size of its main piece', (project) => {
    const editions = editionsOf({ project, shapes: buildShapes(project) });
    const size = finishedSize(editions)?.map(({ inch }) => printInches(inch, 'plain'));
    const found = [mainPiece(editions)?.id.value, size?.join(' × ')];
    // The one written in metric: 210 mm folded in half, 183 mm with 35 of it turned up.
    if (project.unit === 'mm') {
      expect(finishedSize(editions)?.map(({ metric }) => metric.mm)).toEqual([105, 148]);
    } else expect(found).toEqual(DEMO[project.slug]);
  });
});
