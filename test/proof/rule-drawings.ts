import type { Drawing } from '../../src/drawing/canvas.ts';
import { pieceDrawing } from '../../src/drawing/piece.ts';
import { lowestBases } from '../../src/drawing/pile.ts';
import { stackDrawing } from '../../src/drawing/stack.ts';
import type { DrawingStyle } from '../../src/drawing/style.ts';
import { type Editions, editionsOf } from '../../src/edition/editions.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { sheetsOf } from '../../src/shape/sheets.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { english } from '../drawing/english.ts';
import { pageDrawing } from '../shape/forms/page-drawing.ts';
import { filesOf, type Shown, type WrittenExample } from './written-example.ts';

type Picture = Pick<Drawing, 'svg' | 'width' | 'height'>;

const STYLE: DrawingStyle = { shown: ['inch'], say: english };
const ROOM = { width: 70, height: 70 };
/** Room about each picture, and above it for a line of words. */
const [GAP, HEAD] = [8, 9];

/**
 * What a rule is about, where it can be seen: the first piece or pile of layers that looks otherwise where the rule fails
 * than where it passes, both side by side, as an SVG file. Undefined of rules about words.
 */
export function ruleDrawing({ fails, passes }: Shown): string | undefined {
  const [wrong, right] = [picturesOf(fails), picturesOf(passes)];
  const redrawn = [...wrong].find(([view, picture]) => !looksAlike(picture, right.get(view) ?? picture));
  if (redrawn) return sideBySide(redrawn[1], right.get(redrawn[0]));
  const gone = [...wrong].find(([view]) => !right.has(view));
  const added = [...right].find(([view]) => !wrong.has(view));
  return gone && sideBySide(gone[1], added?.[1]);
}

/** Whether two pictures show the same, whatever is said of them to those who cannot see it. */
function looksAlike(one: Picture, other: Picture): boolean {
  const [left, right] = [one, other].map(({ svg }) => svg.replace(/ aria-label="[^"]*"/u, ''));
  return left === right;
}

/** Every pile of layers of an example, then every sheet, by what it shows. */
function picturesOf(example: WrittenExample): ReadonlyMap<string, Picture> {
  const pictures = new Map<string, Picture>();
  for (const project of readWorkspaceFromTexts(filesOf(example)).projects) {
    const shapes = buildShapes(project);
    const editions = editionsOf({ project, shapes });
    for (const base of lowestBases(editions)) {
      const pile = stackDrawing(editions, base, ROOM, STYLE);
      if (pile) pictures.set(`on ${base.piece}.${base.part}`, pile);
    }
    for (const piece of shapes.nets.keys()) {
      const sheet = sheetDrawing(editions, piece);
      if (sheet) pictures.set(piece, sheet);
    }
  }
  return pictures;
}

function sheetDrawing(editions: Editions, piece: string): Picture | undefined {
  const nets = sheetsOf(editions.inch.shapes.nets, piece).map(({ net }) => net);
  if (nets.every(({ folds }) => folds.length === 0)) return pieceDrawing(editions, piece, 0.5, STYLE);
  const svg = pageDrawing(piece, nets);
  const [, width = '', height = ''] = /width="([\d.]+)mm" height="([\d.]+)mm"/u.exec(svg) ?? [];
  return { svg, width: Number(width), height: Number(height) };
}

function sideBySide(wrong: Picture, right: Picture | undefined): string | undefined {
  if (!right) return undefined;
  const [width, height] = [
    wrong.width + right.width + 3 * GAP,
    Math.max(wrong.height, right.height) + HEAD + GAP,
  ];
  const placed = ({ svg }: Picture, x: number): string =>
    svg
      .trim()
      .replace('<svg ', `<svg x="${x}" y="${HEAD}" overflow="visible" `)
      .replace(/ width="([\d.]+)mm" height="([\d.]+)mm"/u, ' width="$1" height="$2"');
  const middle = 2 * GAP + wrong.width;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" aria-label="What fails, and what passes" font-family="sans-serif">`,
    '<rect width="100%" height="100%" fill="#fff"/>',
    `<text x="${GAP}" y="5" font-size="3.6">✗ fails</text>`,
    `<text x="${middle}" y="5" font-size="3.6">✓ passes</text>`,
    placed(wrong, GAP),
    placed(right, middle),
    '</svg>\n',
  ].join('\n');
}
