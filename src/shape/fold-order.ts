import { restOf } from './base-panel.ts';
import type { Fold, Mate, Net } from './net.ts';
import { branchOf, type Joint, type PanelTree, panelForest } from './panel-tree.ts';
import { perNet } from './per-net.ts';
import { foldLength, isFlatOn, type Tube, tubesOf } from './tube.ts';

/** Folds made at once. Several steps make a stage: the body, the bottom, the top. */
export type FoldStep = { readonly stage: number; readonly folds: readonly Fold[] };

/**
 * The folding of a net, step by step. Stages are the net's own where it has them; else a tube's body comes first, then
 * the end that is glued, then the other; without a tube, glue tabs come first and then the rest. Within a stage what
 * is stuck under something is folded before it, and flaps of narrow walls before those of wide ones.
 */
export const foldSteps: (net: Net) => readonly FoldStep[] = perNet((net) => {
  const sheet = net.strips ?? net;
  const order = new FoldOrder(sheet);
  const folds = sheet.folds.filter(({ angle, direction }) => angle !== 0 && direction !== 'flat');
  const steps = new Map<string, { stage: number; rank: number; folds: Fold[] }>();
  for (const fold of folds) {
    const [stage, rank] = [order.stageOf(fold), order.rankOf(fold)];
    const step = steps.get(`${stage}/${rank}`) ?? { stage, rank, folds: [] };
    step.folds.push(fold);
    steps.set(`${stage}/${rank}`, step);
  }
  return [...steps.values()].toSorted((a, b) => a.stage - b.stage || a.rank - b.rank);
});

/** How many stages a folding has: `fold-1` to this. */
export function stageCount(net: Net): number {
  return Math.max(0, ...foldSteps(net).map(({ stage }) => stage));
}

/**
 * How the finished shape is shown: folded, but of what folds flat whatever isn't stuck is left a little open: a card,
 * the flap of an envelope. A card with a pop-up stands half open.
 */
export function finishedProgress(net: Net): (fold: Fold) => number {
  const { folds, glue, popUps } = net.strips ?? net;
  if (popUps) return (fold) => (isFlatOn(fold) ? HALF_OPEN : 1);
  const isFlat = folds.every(isFlatOn);
  const stuck = new Set(glue.flatMap(({ from, to }) => [from, to]));
  return ({ panels }) => (isFlat && !panels.some((panel) => stuck.has(panel)) ? 0.88 : 1);
}

/** The share of its folds at which a card stands as a right angle. */
const HALF_OPEN = 0.5;

/** The pose after a stage: its folds and all before it made, the rest flat. */
export function afterStage(net: Net, stage: number): (fold: Fold) => number {
  const done = new Set(foldSteps(net).flatMap((step) => (step.stage <= stage ? step.folds : [])));
  return (fold) => (done.has(fold) ? 1 : 0);
}

/** Works out which fold comes when. A unit is a panel that hangs on the body, with all that hangs on it. */
class FoldOrder {
  readonly #net: Net;
  readonly #tubes: readonly Tube[];
  readonly #tree: PanelTree | undefined;
  readonly #jointOf: ReadonlyMap<Fold, Joint>;
  readonly #units: ReadonlyMap<string, string>;
  readonly #onWideWall = new Map<string, boolean>();

  constructor(net: Net) {
    this.#net = net;
    this.#tubes = tubesOf(net);
    this.#tree = panelForest(net, restOf(net).base).trees[0];
    this.#jointOf = new Map((this.#tree?.joints ?? []).map((joint) => [joint.fold, joint]));
    this.#units = this.#findUnits();
  }

  stageOf(fold: Fold): number {
    if (fold.stage !== undefined) return fold.stage;
    if (this.#tubes.length === 0) return this.#isLooseTab(fold) || !this.#hasLooseTabs() ? 1 : 2;
    if (this.#isBody(fold)) return 1;
    return this.#endsInOrder().indexOf(this.#endOf(fold)) + 2;
  }

  rankOf(fold: Fold): number {
    const unit = this.#unitOf(fold);
    if (unit === undefined || this.#isBody(fold)) return 0;
    const wide = this.#tubes.length > 0 && this.#isOnWideWall(unit) ? 1 : 0;
    return 2 * this.#layerOf(unit, new Set()) + wide;
  }

  /** How many others must be folded before a unit, because they are stuck under it. */
  #layerOf(unit: string, seen: Set<string>): number {
    if (seen.has(unit)) return 0;
    const under = this.#net.glue.flatMap((mate) => {
      const [lower, upper] = this.#stacked(mate);
      return upper === unit && lower !== undefined && lower !== unit ? [lower] : [];
    });
    return Math.max(0, ...under.map((each) => this.#layerOf(each, new Set([...seen, unit])) + 1));
  }

  /**
   * The two units a glue mark joins, the one that is folded first before the other: what is stuck on goes first; but a
   * flap of a wide wall that is stuck to the one the narrow flaps stick to comes after it, or it would lie between.
   */
  #stacked({ from, to }: Mate): readonly [string | undefined, string | undefined] {
    const [first, second] = [this.#units.get(from), this.#units.get(to)];
    if (first === undefined || second === undefined || !this.#isOnWideWall(first)) return [first, second];
    const onSecond = this.#net.glue.flatMap((mate) => (mate.to === to ? [this.#units.get(mate.from)] : []));
    const holdsNarrow = onSecond.some((each) => each !== undefined && !this.#isOnWideWall(each));
    return holdsNarrow ? [second, first] : [first, second];
  }

  #isBody(fold: Fold): boolean {
    return this.#tubes.some(({ joints }) => joints.some((joint) => joint.fold === fold));
  }

  /** Each panel's unit; panels of the body (the tube's walls, or the base) have none. */
  #findUnits(): Map<string, string> {
    const body = new Set(this.#tubes.flatMap(({ walls, tab }) => [...walls, tab]));
    const units = new Map<string, string>();
    for (const { parent, child } of this.#tree?.joints ?? []) {
      const unit = units.get(parent) ?? child;
      if (!body.has(child)) units.set(child, unit);
    }
    return units;
  }

  #unitOf(fold: Fold): string | undefined {
    const joint = this.#jointOf.get(fold);
    return joint && this.#units.get(joint.child);
  }

  #unitFold(unit: string): Fold | undefined {
    return this.#tree?.joints.find(({ child }) => child === unit)?.fold;
  }

  #isOnWideWall(unit: string): boolean {
    const isOn = this.#onWideWall.get(unit) ?? this.#isWiderThanOthers(unit);
    this.#onWideWall.set(unit, isOn);
    return isOn;
  }

  /** Whether a unit is wider than another at the same end. */
  #isWiderThanOthers(unit: string): boolean {
    const end = this.#sideOf(unit);
    const widths = [...new Set(this.#units.values())]
      .filter((each) => this.#sideOf(each) === end)
      .map((each) => this.#widthOf(each));
    return this.#widthOf(unit) > Math.min(...widths) + 1e-6;
  }

  #widthOf(unit: string): number {
    const fold = this.#unitFold(unit);
    return fold ? foldLength(fold).mm : 0;
  }

  /** The place of a unit's fold across the tube, the same for all flaps of one end. */
  #sideOf(unit: string): string {
    const fold = this.#unitFold(unit);
    const upright = this.#tubes[0]?.lines === 'upright';
    return fold ? `${upright ? fold.from.y : fold.from.x}` : '';
  }

  #endOf(fold: Fold): string {
    const unit = this.#unitOf(fold);
    return unit === undefined ? '' : this.#sideOf(unit);
  }

  /** The ends of a tube, those with glue first. */
  #endsInOrder(): string[] {
    const units = [...new Set(this.#units.values())];
    const glued = new Set(
      this.#net.glue.flatMap(({ from, to }) => [this.#units.get(from), this.#units.get(to)]),
    );
    const ends = units.filter((unit) => glued.has(unit)).map((unit) => this.#sideOf(unit));
    return [...new Set([...ends, ...units.map((unit) => this.#sideOf(unit))])];
  }

  #hasLooseTabs(): boolean {
    return this.#net.folds.some((fold) => this.#isLooseTab(fold));
  }

  /** A panel without others on it, hanging on a wall, that is stuck to something. */
  #isLooseTab(fold: Fold): boolean {
    const joint = this.#jointOf.get(fold);
    if (!joint || !this.#tree || joint.parent === this.#tree.root) return false;
    const alone = branchOf(this.#tree, joint.child).size === 1;
    return alone && this.#net.glue.some(({ from }) => from === joint.child);
  }
}
