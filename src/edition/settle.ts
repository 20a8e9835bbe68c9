import { Length } from '../measure/length.ts';
import type { Finding, RuleId } from '../project/finding.ts';
import type { Piece, Project, Workspace } from '../project/model.ts';
import { proofMeasures } from '../proof/proof.ts';
import { buildNets } from '../shape/build.ts';
import { baseSize, layPieces } from '../shape/layers.ts';
import type { Net } from '../shape/net.ts';
import type { Layer, Shapes } from '../shape/shapes.ts';
import { type Candidate, candidatesOf, type Rung } from './candidates.ts';
import type { Edition } from './editions.ts';
import { keyOf, movePiece, type Primary, primariesOf } from './primaries.ts';
import { type Built, liesOnStep, signatureOf } from './signature.ts';

/** A piece whose numbers had to move farther than they should, or to half steps, or that has a fault all the same. */
export type Strain = {
  readonly piece: Piece;
  /** The length that had to give way, as written and in the edition. */
  readonly own: Length;
  readonly edition: Length;
  /** Whether nothing was found that folds and fits as the piece does as written. */
  readonly faulty: boolean;
};

type Settled = { readonly edition: Edition; readonly strains: readonly Strain[] };

/** What a piece is cut from is the reader's to choose: a sheet that is too small never bends the numbers. */
const PAPER: RuleId = 'piece-exceeds-sheet';

/** What makes a finding of one edition the same as one of the other. */
export function findingKey({ rule, at }: Pick<Finding, 'rule' | 'at'>): string {
  return `${rule} ${at.start}`;
}

/** How many candidates of one piece are tried on each rung. */
const MOST_TRIED = 150;

/**
 * Makes an edition out of another: its pieces are settled one by one, each base before what lies on it, and a settled
 * piece never moves again. A piece takes the nearest of its candidates that keeps what the eye sees and in which the
 * proof finds nothing that it doesn't find in the piece it comes from.
 *
 * @param other The project of the new edition, but for its pieces.
 * @param exact A piece that was measured with that edition's ruler already, and stays as it was written.
 */
export function settleEdition(
  workspace: Workspace,
  own: Edition,
  other: Project,
  exact: (piece: Piece) => Piece | undefined,
): Settled {
  const settling = new Settling(workspace, own, other);
  for (const piece of basesFirst(own)) {
    const written = exact(piece);
    if (written) settling.keep(written);
    else settling.settle(piece);
  }
  return settling.settled();
}

/** A piece as one edition has it: what it is built to, and what the proof finds in it alone. */
type Trial = {
  readonly built: Built;
  readonly nets: ReadonlyMap<string, Net>;
  readonly isBuilt: boolean;
  readonly findings: () => Iterable<string>;
};

class Settling {
  readonly #workspace: Workspace;
  readonly #own: Edition;
  readonly #pieces: Map<string, Piece> = new Map<string, Piece>();
  readonly #nets: Map<string, Net> = new Map<string, Net>();
  /** The other edition, as far as it is settled. */
  readonly #other: Edition;
  readonly #layers: Layer[] = [];
  readonly #strains: Strain[] = [];

  constructor(workspace: Workspace, own: Edition, other: Project) {
    this.#workspace = workspace;
    this.#own = own;
    const shapes = { nets: this.#nets, layers: this.#layers, findings: [] };
    this.#other = { project: { ...other, pieces: this.#pieces }, shapes };
  }

  keep(piece: Piece): void {
    this.#accept(this.#tryOut(piece, this.#other, []));
  }

  settle(piece: Piece): void {
    const layer = this.#own.shapes.layers.find((each) => each.piece === piece);
    const base = piece.on && baseSize(piece.on.value, this.#nets);
    const lying = layer && base && { layer, base };
    const own = this.#tryOut(piece, this.#own, besides(layer, this.#own.shapes.layers));
    const known = new Set(own.findings());
    const keepsLook = signatureOf(own.built);
    const primaries = primariesOf(piece, lying);
    const isSound = ({ built, isBuilt, findings }: Trial, step: Length): boolean =>
      isBuilt && liesOnStep(built, step) && keepsLook(built) && !hasOther(findings(), known);

    const tryOut = (candidate: Candidate): Trial => {
      const moved = movePiece(
        piece,
        this.#other.project.unit === 'in' ? 'in' : 'mm',
        (length, kind) => candidate.get(keyOf(length, kind)) ?? length,
        lying,
      );
      return this.#tryOut(moved, this.#other, besides(layer, this.#layers));
    };
    // As written, which is no round number, for a piece that can't even be made in round ones.
    const exact: Candidate = new Map(primaries.map(({ key, own: length }) => [key, length]));
    let nearest: { readonly candidate: Candidate; readonly trial: Trial } | undefined;
    const rungs = rungsOf(this.#other.project);
    const [whole] = rungs;
    for (const [index, rung] of rungs.entries()) {
      for (const candidate of take(candidatesOf(primaries, rung), MOST_TRIED)) {
        const trial = tryOut(candidate);
        if (trial.isBuilt) nearest ??= { candidate, trial };
        if (!isSound(trial, rung.step)) continue;
        if (index > 0)
          this.#strains.push({ piece, ...yielding(candidate, primaries, whole.step), faulty: false });
        this.#accept(trial);
        return;
      }
    }
    const { candidate, trial } = nearest ?? { candidate: exact, trial: this.#tryOut(piece, this.#other, []) };
    this.#strains.push({ piece, ...yielding(candidate, primaries, whole.step), faulty: true });
    this.#accept(trial);
  }

  /** The edition, its pieces in the order of the sheet whatever order they were settled in. */
  settled(): Settled {
    const { project: own, shapes } = this.#own;
    const pieces = inOrderOf(own.pieces.keys(), this.#pieces);
    const nets = inOrderOf(shapes.nets.keys(), this.#nets);
    const project = { ...this.#other.project, pieces };
    return {
      edition: { project, shapes: { nets, ...layPieces([...pieces.values()], nets) } },
      strains: this.#strains,
    };
  }

  /** Builds one piece on the nets of what it lies on, by the code that builds every piece. */
  #tryOut(piece: Piece, { project, shapes: { nets: bases } }: Edition, beside: readonly Layer[]): Trial {
    const { nets, findings } = buildNets(piece, project);
    const base = piece.on && project.pieces.get(piece.on.value.piece);
    const laid = layPieces([...(base ? [base] : []), piece], new Map([...bases, ...nets]));
    return {
      built: {
        piece,
        nets: [...nets.values()],
        layer: laid.layers.find((layer) => layer.piece === piece),
        beside,
      },
      nets,
      isBuilt: nets.size > 0,
      findings: () =>
        this.#findings(piece, base, project, {
          nets,
          layers: laid.layers,
          findings: [...findings, ...laid.findings],
        }),
    };
  }

  /** What the proof finds in a piece and its base, as far as their paper is no matter. */
  *#findings(piece: Piece, base: Piece | undefined, project: Project, shapes: Shapes): Generator<string> {
    const pieces = new Map([...(base ? [base] : []), piece].map((each) => [each.id.value, each]));
    for (const finding of proofMeasures(this.#workspace, { ...project, pieces }, shapes)) {
      if (finding.rule !== PAPER) yield findingKey(finding);
    }
  }

  #accept({ built: { piece, layer }, nets }: Trial): void {
    this.#pieces.set(piece.id.value, piece);
    for (const [id, net] of nets) this.#nets.set(id, net);
    if (layer) this.#layers.push(layer);
  }
}

function hasOther(found: Iterable<string>, known: ReadonlySet<string>): boolean {
  for (const each of found) if (!known.has(each)) return true;
  return false;
}

/** Bases before what lies on them. */
function basesFirst({ project, shapes }: Edition): readonly Piece[] {
  const layers = shapes.layers.map(({ piece }) => piece);
  return [...[...project.pieces.values()].filter((piece) => !layers.includes(piece)), ...layers];
}

/** The layers on the same base that were stuck on before. */
function besides(layer: Layer | undefined, layers: readonly Layer[]): readonly Layer[] {
  if (!layer) return [];
  const before = layers.findIndex(({ piece }) => piece.id.value === layer.piece.id.value);
  const earlier = before < 0 ? layers : layers.slice(0, before);
  return earlier.filter(({ baseName }) => baseName === layer.baseName);
}

/** Whole steps first, then half ones, then farther. */
function rungsOf({ unit, metric }: Project): readonly [Rung, ...Rung[]] {
  const step = unit === 'in' ? Length.of(1, 16, 'in') : Length.of(1, metric === 'half' ? 2 : 1, 'mm');
  const reach = Length.max(Length.of(3, 2, 'mm'), step);
  return [
    { step, reach },
    { step: step.half(), reach },
    { step, reach: reach.times(2) },
    { step: step.half(), reach: reach.times(2) },
  ];
}

/** The length that had to give way: one between two marks, else the one that moved farthest. */
function yielding(
  candidate: Candidate,
  primaries: readonly Primary[],
  step: Length,
): Pick<Strain, 'own' | 'edition'> {
  const moved = primaries.map(({ key, own }) => ({ own, edition: candidate.get(key) ?? own }));
  const far = ({ own, edition }: (typeof moved)[number]): Length => edition.minus(own).abs();
  const between = moved.filter(({ edition }) => !edition.isMultipleOf(step));
  const [first = { own: Length.zero, edition: Length.zero }, ...others] =
    between.length > 0 ? between : moved;
  return others.reduce((most, each) => (far(each).greaterThan(far(most)) ? each : most), first);
}

function* take<T>(values: Iterable<T>, most: number): Generator<T> {
  let taken = 0;
  for (const value of values) {
    if (taken === most) return;
    taken += 1;
    yield value;
  }
}

function inOrderOf<T>(keys: Iterable<string>, values: ReadonlyMap<string, T>): ReadonlyMap<string, T> {
  return new Map(
    [...keys].flatMap((key) => {
      const value = values.get(key);
      return value === undefined ? [] : [[key, value] as const];
    }),
  );
}
