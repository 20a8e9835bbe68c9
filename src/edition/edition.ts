import type { Finding } from '../project/finding.ts';
import type { Project, Workspace } from '../project/model.ts';
import { proofMeasures } from '../proof/proof.ts';
import { type Edition, type Editions, plainEditions } from './editions.ts';
import { findingKey, type Strain, settleEdition } from './settle.ts';

/** Both editions of a project. */
type WorkedOut = {
  readonly editions: Editions;
  /**
   * Where the one that was worked out strays from the one written, and what is wrong in it alone: notes, for the
   * project as written is right.
   */
  readonly findings: readonly Finding[];
};

/**
 * Both editions of a project that is sound as written: the one as written, and the same project made again in whole
 * millimeters (or half ones, where the project asks), or in sixteenths of an inch. `found` is what the proof found in
 * it as written.
 */
export function workOutEditions(workspace: Workspace, own: Edition, found: readonly Finding[]): WorkedOut {
  const { printed, own: written } = plainEditions(own);
  const { edition, strains } = settleEdition(workspace, own, otherProject(own.project));
  const [inch, metric] = written === 'inch' ? [own, edition] : [edition, own];
  const editions: Editions = { own: written, printed, inch, metric };
  return {
    editions,
    findings: [
      ...strains.map((strain) => strainFinding(own.project, edition.project, strain)),
      ...onlyThere(workspace, edition, new Set(found.map(findingKey))),
    ],
  };
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
