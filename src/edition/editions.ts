import type { Length } from '../measure/length.ts';
import { type EditionName, editionIn, type Units } from '../measure/ruler-unit.ts';
import type { Size } from '../measure/size.ts';
import type { Piece, Project } from '../project/model.ts';
import type { Shapes } from '../shape/shapes.ts';

/** One project in one system of measurement, with its geometry. */
export type Edition = { readonly project: Project; readonly shapes: Shapes };

/**
 * A project in inches and in millimeters. Both have the same pieces, panels and score lines in the same order, so
 * any length can be picked from both; `own` says which of them the demonstrator wrote, `printed` which are shown. One
 * that is not shown is not worked out either: the one as written stands in its place.
 */
export type Editions = {
  readonly own: EditionName;
  readonly printed: Units;
  readonly inch: Edition;
  readonly metric: Edition;
  /** What was chosen for each primary length of the pieces of the edition that was made from the other. */
  readonly settled: readonly SettledLength[];
  /** Of the project's other variants, in the order they are written; none where it has none. */
  readonly others: readonly Editions[];
};

/** A length that a maker chooses, as it is in both editions. */
export type SettledLength = Twin & { readonly piece: string; readonly kind: 'part' | 'place' };

/** The editions that are shown, the leading one first; only one where no other is printed. */
export type Shown = readonly [lead: EditionName, ...others: EditionName[]];

/** What is shown where `lead` would come first: the edition as written, if nothing else is said. */
export function shownEditions(
  { own, printed }: Pick<Editions, 'own' | 'printed'>,
  lead: EditionName = own,
): Shown {
  if (printed !== 'both') return [printed];
  return lead === 'inch' ? ['inch', 'metric'] : ['metric', 'inch'];
}

/** The same in both editions, a length if nothing else is said: printed side by side, never converted again. */
export type Twin<T = Length> = { readonly inch: T; readonly metric: T };

/** Picks the same out of both editions; undefined unless it is in both. */
export function twin<T>(editions: Editions, pick: (edition: Edition) => T | undefined): Twin<T> | undefined {
  const [inch, metric] = [pick(editions.inch), pick(editions.metric)];
  return inch === undefined || metric === undefined ? undefined : { inch, metric };
}

/** Picks a row of lengths out of both editions, each beside its twin; undefined unless it is in both. */
export function twins(
  editions: Editions,
  pick: (edition: Edition) => readonly Length[] | undefined,
): readonly Twin[] | undefined {
  const rows = twin(editions, pick);
  return rows && pairs(rows);
}

/** A size as a row of lengths. */
export function sidesOf({ width, height }: Size): readonly [Length, Length] {
  return [width, height];
}

/** Two rows, of lengths if nothing else is said, as one of twins. */
export function pairs<T extends object = Length>({ inch, metric }: Twin<readonly T[]>): readonly Twin<T>[] {
  return inch.flatMap((each, index) => {
    const other = metric[index];
    return other ? [{ inch: each, metric: other }] : [];
  });
}

/** The edition the demonstrator wrote. */
export function ownEdition(editions: Editions): Edition {
  return editions[editions.own];
}

/** The edition a project is written in. */
export function editionWritten({ unit }: Project): EditionName {
  return editionIn(unit);
}

/** The edition whose ruler a piece was measured with: a shared box may be in inches in a sheet in millimeters. */
export function rulerWritten({ body }: Piece, { unit }: Project): EditionName {
  return editionIn(body.kind === 'form' ? body.ruler : (body.cut.unit ?? unit));
}

/** A project in its own unit and in the other; where there is no other, its own stands for both. */
export function editionsOf(
  edition: Edition,
  other: Edition = edition,
  settled: readonly SettledLength[] = [],
): Editions {
  const own = editionWritten(edition.project);
  const [inch, metric] = own === 'inch' ? [edition, other] : [other, edition];
  return { own, printed: edition.project.units, inch, metric, settled, others: [] };
}
