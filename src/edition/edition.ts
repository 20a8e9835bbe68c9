import type { Finding } from '../project/finding.ts';
import type { Commons, Project } from '../project/model.ts';
import { proofMeasures } from '../proof/proof.ts';
import { type Edition, editionWritten, rulerWritten } from './editions.ts';
import { findOthers } from './others.ts';

/**
 * Whether a sound project has pieces measured with the other ruler, such as a shared box in inches in a sheet in
 * millimeters. Those are made in the sheet's unit, or they would not fold square there.
 */
export function hasForeignPieces({ project, shapes }: Edition): boolean {
  const own = editionWritten(project);
  const pieces = [...project.pieces.values()];
  return shapes.findings.length === 0 && pieces.some((piece) => rulerWritten(piece, project) !== own);
}

/** The project in its other unit, but for its pieces: cut from that edition's own paper. */
export function otherProject(project: Project): Project {
  const unit = project.unit === 'in' ? 'mm' : 'in';
  const { stock, substitutes } = project;
  return {
    ...project,
    unit,
    stock: inOtherSheets(stock),
    substitutes: inOtherSheets(substitutes),
    pieces: new Map(),
  };
}

function inOtherSheets(stocks: Project['stock']): Project['stock'] {
  return new Map(
    [...stocks].map(([id, { sheets, otherSheets, ...each }]) => [
      id,
      { ...each, sheets: otherSheets, otherSheets: sheets },
    ]),
  );
}

/** What the proof finds in the other edition of a project and did not find in its own. */
export function findOnlyThere(
  workspace: Commons,
  { project, shapes }: Edition,
  found: readonly Finding[],
): readonly Finding[] {
  const edition = editionWritten(project);
  const others = findOthers(proofMeasures(workspace, project, shapes), () => found);
  return [...others].map((finding) => ({ ...finding, edition }));
}
