import { Length } from '../../measure/length.ts';
import type { Piece, Project } from '../../project/model.ts';
import { caliperOf, grammageOf } from '../../shape/caliper.ts';
import type { Net } from '../../shape/net.ts';
import type { Shapes } from '../../shape/shapes.ts';
import type { ClosedFlat } from './closed-flat.ts';

type Made = { readonly project: Project; readonly shapes: Shapes };

/**
 * About how thick a closed piece is where most lies on most: its own paper, the layers on its panels, and one sheet
 * of each of `inside`. From the papers' thickness, which is itself an estimate where its maker is not asked; adhesive
 * and the air between are not reckoned.
 */
export function closedThickness(
  made: Made,
  piece: Piece,
  { piles }: ClosedFlat,
  inside: readonly Piece[],
): Length {
  const paper = thicknessOf(made.project, piece);
  const heights = piles.map((panels) =>
    Length.sum(panels.map((panel) => paper.plus(layersOn(made, basesOf(made, piece, panel))))),
  );
  const loose = inside.map((sheet) => thicknessOf(made.project, sheet).times(sheet.count.value));
  return Length.max(Length.zero, ...heights).plus(Length.sum(loose));
}

function thicknessOf(project: Project, piece: Piece): Length {
  return caliperOf(piece.stock && project.stock.get(piece.stock.value)).thickness;
}

/** What a layer on a panel names as its base; on a flat piece that may be the piece itself. */
function basesOf({ shapes }: Made, { id }: Piece, panel: string): readonly string[] {
  const net = shapes.nets.get(id.value);
  const named = net?.panels.find((each) => each.id === panel)?.name ?? panel;
  return net?.panels.length === 1 ? [id.value, `${id.value}.${named}`] : [`${id.value}.${named}`];
}

/** The tallest pile of layers on a base. */
function layersOn(made: Made, bases: readonly string[]): Length {
  const piles = made.shapes.layers
    .filter(({ baseName }) => bases.includes(baseName))
    .map(({ piece }) => thicknessOf(made.project, piece).plus(layersOn(made, [piece.id.value])));
  return Length.max(Length.zero, ...piles);
}

/** Grams of some pieces together; undefined when the weight of any paper is unknown. */
export function gramsOf({ project, shapes }: Made, pieces: readonly Piece[]): number | undefined {
  let grams = 0;
  for (const piece of pieces) {
    const weight = piece.stock && project.stock.get(piece.stock.value)?.weight;
    const net = shapes.nets.get(piece.id.value);
    if (!weight || !net) return undefined;
    grams += (grammageOf(weight.value) * squareMillimetres(net) * piece.count.value) / 1_000_000;
  }
  return grams;
}

/** What is left of a net once its waste is cut away, by the shoelace formula. */
function squareMillimetres({ panels }: Net): number {
  return panels.reduce((total, { outline }) => {
    const twice = outline.reduce((sum, { x, y }, index) => {
      const next = outline[(index + 1) % outline.length] ?? { x, y };
      return sum + x.mm * next.y.mm - next.x.mm * y.mm;
    }, 0);
    return total + Math.abs(twice) / 2;
  }, 0);
}
