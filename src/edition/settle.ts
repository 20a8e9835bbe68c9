import type { Length } from '../measure/length.ts';
import type { Finding, RuleId } from '../project/finding.ts';
import type { Commons, Piece, Project } from '../project/model.ts';
import { isSameRef } from '../project/ref.ts';
import { proofLinks, proofMeasures } from '../proof/proof.ts';
import { buildSheets } from '../shape/build.ts';
import { baseSize, layPieces, stackOn } from '../shape/layers.ts';
import { type Link, linksOf } from '../shape/links.ts';
import type { Layer, Shapes } from '../shape/shapes.ts';
import { type Sheet, sheetsOf } from '../shape/sheets.ts';
import { candidatesOf, type Numbers, optionsOf, reachesOf, rungsOf } from './candidates.ts';
import type { SettledLength } from './editions.ts';
import { type Edition, editionWritten, rulerWritten } from './editions.ts';
import { findOthers } from './others.ts';
import { keyOf, type LayerOnBase, movePiece, type NewLength, primariesOf } from './primaries.ts';
import { publishedNumbers, settledOf, withPublished } from './published.ts';
import { withCounts } from './row-counts.ts';
import { heldIn, settlingOrder } from './settling-order.ts';
import { type Built, liesOnStep, signatureOf } from './signature.ts';
import { cutsWithin, type OptionsOfRung, type Strain, staysNear, yielding } from './strain.ts';

/** What was chosen for a piece, and what had to give way for it. */
type Settled = { readonly numbers: Numbers; readonly strain: Strain | undefined };

/** What a piece is cut from is the reader's to choose: a sheet that is too small never bends the numbers. */
const PAPER: readonly RuleId[] = ['piece-exceeds-sheet', 'substitute-too-small'];

/** How many candidates of one piece are tried on each rung. */
const MOST_TRIED = 150;

/**
 * Makes an edition out of another: its pieces are settled one by one, each base before what lies on it, and a settled
 * piece never moves again. A piece takes the nearest of its candidates that keeps what the eye sees and in which the
 * proof finds nothing that it doesn't find in the piece it comes from. One that was measured with the ruler of the new
 * edition already stays as it was written.
 *
 * @param to The project of the new edition, but for its pieces.
 * @returns The edition, and where it strays from what was written: notes, for the project as written is right.
 */
export function settleEdition(
  workspace: Commons,
  written: Project,
  from: Edition,
  to: Project,
): {
  readonly edition: Edition;
  readonly settled: readonly SettledLength[];
  readonly findings: readonly Finding[];
} {
  const settling = new Settling(workspace, from, to);
  const published = publishedNumbers(written, editionWritten(to));
  const settled: SettledLength[] = [];
  const findings: Finding[] = [];
  for (const piece of settlingOrder(from)) {
    const exact = written.pieces.get(piece.id.value);
    if (exact && rulerWritten(exact, written) === editionWritten(to)) {
      settling.keep(exact);
      continue;
    }
    const lying = settling.lyingOf(piece);
    const primaries = primariesOf(piece, lying);
    const rungs: OptionsOfRung[] = [];
    for (const rung of rungsOf(to)) rungs.push({ ...rung, options: optionsOf(primaries, rung) });
    const { numbers, strain } = settling.settle(piece, lying, rungs, published.get(piece.id.value));
    settled.push(...settledOf(piece, primaries, numbers, to));
    if (!strain) continue;
    const { own, edition, faulty } = strain;
    const facts = {
      piece: piece.id.value,
      own: [own, written.unit],
      other: [edition, to.unit],
      faulty,
    } as const;
    findings.push({ rule: 'edition-strained', at: piece.id.at, facts });
  }
  return { edition: settling.edition(), settled, findings };
}

/** A piece as one edition has it: what it is built to, and what the proof finds in it alone. */
type Trial = {
  readonly built: Built;
  readonly sheets: readonly Sheet[];
  readonly findings: () => Iterable<Finding>;
};

class Settling {
  readonly #workspace: Commons;
  readonly #from: Edition;
  readonly #pieces: Map<string, Piece> = new Map<string, Piece>();
  readonly #nets: Map<string, readonly Sheet[]> = new Map<string, readonly Sheet[]>();
  readonly #layers: Layer[] = [];
  readonly #links: readonly Link[];
  /** The new edition, as far as it is settled. */
  readonly #soFar: Edition;

  constructor(workspace: Commons, from: Edition, to: Project) {
    this.#workspace = workspace;
    this.#from = from;
    this.#links = linksOf(from);
    const shapes = { nets: this.#nets, layers: this.#layers, findings: [] };
    this.#soFar = { project: { ...to, pieces: this.#pieces }, shapes };
  }

  /** How a piece lies on its base, and how large that base became. */
  lyingOf(piece: Piece): LayerOnBase | undefined {
    const layer = this.#from.shapes.layers.find((each) => each.piece === piece);
    const base = piece.on && baseSize(piece.on.value, this.#nets);
    return layer && base && { layer, base };
  }

  /** Takes a piece as it was written. */
  keep(piece: Piece): void {
    this.#accept(this.#tryOut(piece, this.#soFar, []));
  }

  /**
   * Takes what was published of a piece where that is sound, else its nearest sound candidate, and tells what strained it.
   * A rung is a step and what lies on it.
   */
  settle(
    piece: Piece,
    lying: LayerOnBase | undefined,
    rungs: readonly OptionsOfRung[],
    published: Numbers | undefined,
  ): Settled {
    const own = this.#tryOut(piece, this.#from, besides(lying, this.#from.shapes.layers));
    let found: readonly Finding[] | undefined;
    const known = (): readonly Finding[] => {
      found ??= [...own.findings()];
      return found;
    };
    const keepsLook = signatureOf(own.built);
    const ruler = this.#soFar.project.unit === 'in' ? 'in' : 'mm';
    const counted = withCounts(piece, this.#from.shapes.nets);
    let nearest: { readonly candidate: Numbers; readonly trial: Trial } | undefined;
    const { far } = reachesOf(this.#soFar.project);
    const kept = published && withPublished(rungs[0]?.options ?? [], published);
    const tries = [
      ...(kept ? rungs.map(({ step }, index) => ({ index, step, candidates: [kept] })) : []),
      ...rungs.map(({ step, options }, index) => ({
        index,
        step,
        candidates: candidatesOf(options, MOST_TRIED),
      })),
    ];
    for (const { index, step, candidates } of tries) {
      for (const candidate of candidates) {
        const move: NewLength = (length, kind) => candidate.get(keyOf(length, kind)) ?? length;
        const moved = movePiece(counted, ruler, move, lying);
        const trial = this.#tryOut(moved, this.#soFar, besides(lying, this.#layers));
        if (trial.sheets.length === 0) continue;
        nearest ??= { candidate, trial };
        const isRound = liesOnStep(trial.built, step) && cutsWithin(far, piece, moved);
        if (!isRound || !keepsLook(trial.built)) continue;
        if (!findOthers(trial.findings(), known).next().done) continue;
        this.#accept(trial);
        const isNear = index === 0 && staysNear(candidate, rungs);
        const strain = isNear ? undefined : { ...yielding(candidate, rungs), faulty: false };
        return { numbers: candidate, strain };
      }
    }
    // As written, which is no round number, a piece that can't even be made in round ones.
    this.#accept(nearest?.trial ?? this.#tryOut(piece, this.#soFar, []));
    const numbers = nearest?.candidate ?? new Map<string, Length>();
    return { numbers, strain: { ...yielding(numbers, rungs), faulty: true } };
  }

  /** The edition, its pieces in the order of the sheet whatever order they were settled in. */
  edition(): Edition {
    const { project, shapes } = this.#from;
    const pieces = inOrderOf(project.pieces.keys(), this.#pieces);
    const nets = inOrderOf(shapes.nets.keys(), this.#nets);
    const stacked = layPieces([...pieces.values()], nets);
    return { project: { ...this.#soFar.project, pieces }, shapes: { nets, ...stacked } };
  }

  /** Builds one piece on the nets of what it lies on, by the code that builds every piece. */
  #tryOut(piece: Piece, { project, shapes }: Edition, beside: readonly Layer[]): Trial {
    const { sheets, findings } = buildSheets(piece, project);
    const base = piece.on && project.pieces.get(piece.on.value.piece);
    const nets = new Map([[piece.id.value, sheets]]);
    if (base) nets.set(base.id.value, sheetsOf(shapes.nets, base.id.value));
    const all = [...(base ? [base] : []), piece];
    const laid = layPieces(all, nets);
    const layer = laid.layers.find((each) => each.piece === piece);
    const alone = { ...project, pieces: new Map(all.map((each) => [each.id.value, each])) };
    const own = new Map(sheets.length > 0 ? [[piece.id.value, sheets] as const] : []);
    const found = { nets: own, layers: laid.layers, findings: [...findings, ...laid.findings] };
    return {
      built: { piece, nets: sheets.map(({ net }) => net), layer, beside },
      sheets,
      findings: () => this.#findings(alone, found, this.#linked(piece, sheets, { project, shapes })),
    };
  }

  /** A piece with those that it takes and all that lies on them; undefined where it takes none. */
  #linked(piece: Piece, sheets: readonly Sheet[], { project, shapes }: Edition): Edition | undefined {
    const held = heldIn(piece, this.#links);
    if (held.length === 0) return undefined;
    const ids = held.flatMap((each) => stackOn(this.#from.shapes, each)).map(({ id }) => id.value);
    const all = [...ids.flatMap((id) => project.pieces.get(id) ?? []), piece];
    const pieces = new Map(all.map((each) => [each.id.value, each]));
    const nets = new Map([...shapes.nets, [piece.id.value, sheets] as const]);
    return { project: { ...project, pieces }, shapes: { ...shapes, nets } };
  }

  /** What the proof finds in a piece and its base, as far as their paper is no matter. */
  *#findings(project: Project, shapes: Shapes, linked: Edition | undefined): Generator<Finding> {
    for (const finding of proofMeasures(this.#workspace, project, shapes)) {
      if (!PAPER.includes(finding.rule)) yield finding;
    }
    if (linked) yield* proofLinks(this.#workspace, linked.project, linked.shapes);
  }

  #accept({ built: { piece, layer }, sheets }: Trial): void {
    this.#pieces.set(piece.id.value, piece);
    if (sheets.length > 0) this.#nets.set(piece.id.value, sheets);
    if (layer) this.#layers.push(layer);
  }
}

/** The layers on the same base that were stuck on before. */
function besides(lying: LayerOnBase | undefined, layers: readonly Layer[]): readonly Layer[] {
  if (!lying) return [];
  const { piece, on } = lying.layer;
  const before = layers.findIndex((layer) => layer.piece.id.value === piece.id.value);
  const earlier = before < 0 ? layers : layers.slice(0, before);
  return earlier.filter((layer) => isSameRef(layer.on, on));
}

function inOrderOf<T>(keys: Iterable<string>, values: ReadonlyMap<string, T>): ReadonlyMap<string, T> {
  return new Map(
    [...keys].flatMap((key) => {
      const value = values.get(key);
      return value === undefined ? [] : [[key, value] as const];
    }),
  );
}
