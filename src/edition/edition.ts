import type { Finding } from '../project/finding.ts';
import type { Piece, Project, Workspace } from '../project/model.ts';
import { proofMeasures } from '../proof/proof.ts';
import { type Edition, type Editions, editionWritten, rulerWritten } from './editions.ts';
import { findingKey, type Strain, settleEdition } from './settle.ts';

/** An edition, and where it strays from what was written: notes, for the project as written is right. */
type Made = { readonly edition: Edition; readonly findings: readonly Finding[] };

/**
 * The edition in the unit of a project: the project as written, but for pieces measured with the other ruler, such as a
 * shared box in inches in a sheet in millimeters. Those are made in the sheet's unit, or they would not fold square there.
 */
export function makeOwnEdition(workspace: Workspace, written: Edition): Made {
  const { project, shapes } = written;
  const own = editionWritten(project);
  const isOwn = (piece: Piece): boolean => rulerWritten(piece, project) === own;
  if (shapes.findings.length > 0 || [...project.pieces.values()].every(isOwn)) {
    return { edition: written, findings: [] };
  }
  const empty = { ...project, pieces: new Map() };
  return made(
    project,
    settleEdition(workspace, written, empty, (piece) => (isOwn(piece) ? piece : undefined)),
  );
}

/**
 * Both editions of a project: its own, and the same project made again in whole millimeters (or half ones, where the
 * project asks), or in sixteenths of an inch. `found` is what the proof found in its own edition, which is sound.
 */
export function workOutEditions(
  workspace: Workspace,
  written: Project,
  own: Edition,
  found: readonly Finding[],
): { readonly editions: Editions; readonly findings: readonly Finding[] } {
  const unit = editionWritten(written);
  const foreign = ({ id }: Piece): Piece | undefined => {
    const piece = written.pieces.get(id.value);
    return piece && rulerWritten(piece, written) !== unit ? piece : undefined;
  };
  const other = made(written, settleEdition(workspace, own, otherProject(own.project), foreign));
  const [inch, metric] = unit === 'inch' ? [own, other.edition] : [other.edition, own];
  return {
    editions: { own: unit, printed: written.units, inch, metric },
    findings: [...other.findings, ...onlyThere(workspace, other.edition, new Set(found.map(findingKey)))],
  };
}

function made(written: Project, { edition, strains }: ReturnType<typeof settleEdition>): Made {
  return { edition, findings: strains.map((strain) => strainFinding(written, edition.project, strain)) };
}

function strainFinding({ unit }: Project, other: Project, { piece, own, edition, faulty }: Strain): Finding {
  const facts = {
    piece: piece.id.value,
    own: [own, unit],
    other: [edition, other.unit],
    faulty,
  } as const;
  return { rule: 'edition-strained', at: piece.id.at, facts };
}

function onlyThere(
  workspace: Workspace,
  { project, shapes }: Edition,
  known: ReadonlySet<string>,
): readonly Finding[] {
  const edition = project.unit === 'in' ? 'inch' : 'metric';
  return [...proofMeasures(workspace, project, shapes)]
    .filter((finding) => !known.has(findingKey(finding)))
    .map((finding) => ({ ...finding, edition }));
}

/** The project in its other unit, but for its pieces: cut from that edition's own paper. */
function otherProject(project: Project): Project {
  const unit = project.unit === 'in' ? 'mm' : 'in';
  const stock = [...project.stock].map(
    ([id, { sheets, otherSheets, ...each }]) =>
      [id, { ...each, sheets: otherSheets, otherSheets: sheets }] as const,
  );
  return { ...project, unit, stock: new Map(stock), pieces: new Map() };
}
