import type { Length } from '../measure/length.ts';
import type { Piece, Project } from '../project/model.ts';
import type { Place } from '../project/source.ts';
import { caliperOf } from '../shape/caliper.ts';
import { folded, type Soundness } from '../shape/closure/sound.ts';
import type { FoldedShape } from '../shape/folded-shape.ts';
import type { Net } from '../shape/net.ts';
import { type Shapes, sheetsOf } from '../shape/shapes.ts';

/** A sheet of a project that is folded. */
export type FoldedSheet = {
  readonly piece: Piece;
  /** As a person names it: `box`, or `box.lid` for a further sheet of a form. */
  readonly name: string;
  /** The net that folds. */
  readonly net: Net;
  readonly shape: FoldedShape;
  readonly caliper: Length;
  readonly soundness: Soundness;
};

/** Every sheet of a project that has folds, folded. */
export function foldedSheets(project: Project, shapes: Shapes): readonly FoldedSheet[] {
  return [...project.pieces.values()].flatMap((piece) => {
    const stock = piece.stock && project.stock.get(piece.stock.value);
    const caliper = caliperOf(stock).thickness;
    return sheetsOf(shapes.nets, piece.id.value)
      .filter(({ net }) => net.folds.length > 0 || net.panels.length > 1)
      .map((sheet) => {
        const name = sheet.name === undefined ? piece.id.value : `${piece.id.value}.${sheet.name}`;
        const { shape, soundness } = folded(sheet.net, caliper);
        return { piece, name, net: shape.net, shape, caliper, soundness };
      });
  });
}

/** Those whose body closes, so that ends, flaps and glue can be judged. */
export function closedSheets(project: Project, shapes: Shapes): readonly FoldedSheet[] {
  return foldedSheets(project, shapes).filter(({ soundness }) => soundness === 'closes');
}

/** `box.front`, as a panel is named in a sheet. */
export function panelName({ piece }: FoldedSheet, panel: string): string {
  return `${piece.id.value}.${panel}`;
}

/** Where a sheet's shape as a whole is written: its form, else its piece. */
export function shapePlace({ piece }: Pick<FoldedSheet, 'piece'>): Place {
  return piece.body.kind === 'form' ? piece.body.form.at : piece.id.at;
}
