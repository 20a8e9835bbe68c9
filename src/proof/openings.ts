import { Length, type Unit } from '../measure/length.ts';
import type { Piece } from '../project/model.ts';
import type { OpeningAsWritten } from '../project/opening.ts';
import { caliperOf, stockOf } from '../shape/caliper.ts';
import type { Net, Opening, Panel } from '../shape/net.ts';
import { sheetsOf } from '../shape/sheets.ts';
import type { ProofContext } from './rule.ts';

/** What every finding on an opening tells: its piece and name, and the unit of its lengths. */
export type OfOpening = { readonly piece: string; readonly opening: string; readonly unit: Unit };

/** An opening in its sheet, and as it was written. */
export type CutOpening = {
  readonly of: OfOpening;
  readonly piece: Piece;
  readonly written: OpeningAsWritten;
  readonly opening: Opening;
  readonly panel: Panel;
  readonly net: Net;
  readonly caliper: Length;
};

/** Every opening of a project that could be cut. */
export function everyOpening({ project, shapes }: ProofContext): readonly CutOpening[] {
  return [...project.pieces.values()].flatMap((piece) => {
    const caliper = caliperOf(stockOf(piece, project)).thickness;
    return sheetsOf(shapes.nets, piece.id.value).flatMap(({ net }) =>
      (net.openings ?? []).flatMap((opening): CutOpening[] => {
        const written = piece.openings.find(({ name }) => name.value === opening.name);
        const panel = net.panels.find(({ id }) => id === opening.panel);
        if (!written || !panel) return [];
        const of = { piece: piece.id.value, opening: opening.name, unit: project.unit };
        return [{ of, piece, written, opening, panel, net, caliper }];
      }),
    );
  });
}

/** Common practice, no source: the narrowest strip of paper that holds beside a cut, or takes glue. */
export function leastPaper(unit: Unit): Length {
  return unit === 'in' ? Length.of(1, 8, 'in') : Length.of(3, 1, 'mm');
}

/** Millimeters that what touches an arc may lie off it: straight stretches stand for arcs. */
export const OFF_ARC = 0.1;
