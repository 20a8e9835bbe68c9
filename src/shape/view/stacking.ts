import { apart, runAlike } from '../closure/overlap.ts';
import type { FoldedPanel, FoldedShape } from '../fold.ts';
import type { Fold } from '../net.ts';
import { type Joint, panelOf, pathBetween } from '../panel-tree.ts';
import { dot } from '../space.ts';
import { isFlatOn, signedAngle, tubesOf } from '../tube.ts';

/** Which of two panels that lie on one another is the upper one. */
export class Stacking {
  readonly shape: FoldedShape;
  readonly #allowed: number;
  readonly #body: ReadonlySet<string>;
  readonly #turnOf: ReadonlyMap<Fold, number>;

  /** `turnOf` says which step of the folding, from 0, makes a fold. */
  constructor(shape: FoldedShape, turnOf: ReadonlyMap<Fold, number>) {
    this.shape = shape;
    this.#allowed = 2 * shape.caliper + 0.5;
    this.#body = new Set(tubesOf(shape.net).flatMap(({ walls }) => walls));
    this.#turnOf = turnOf;
  }

  /** Whether two panels lie in one plane, as far as paper goes. */
  lieTogether(first: FoldedPanel, second: FoldedPanel): boolean {
    return runAlike(first, second) && apart(first, second) <= this.#allowed;
  }

  /**
   * 1 when the second of two panels that lie together is on the first's outer side, -1 when it is on the inner one.
   * A glue area lies inside what it sticks to; panels folded flat on each other follow their fold; else walls lie
   * outside what is tucked behind them, and what is folded later outside what was folded before.
   */
  sideOf(first: FoldedPanel, second: FoldedPanel): 1 | -1 {
    const [a, b] = [first.panel.id, second.panel.id];
    const alike = dot(first.plane.normal, second.plane.normal) > 0;
    const path = pathBetween(this.shape.net, a, b) ?? [];
    const steps = flatSteps(path);
    if (steps !== undefined && steps !== 0) return steps > 0 ? 1 : -1;
    const outer = this.#outer(a, b, path);
    if (outer !== undefined && alike) return outer === b ? 1 : -1;
    if (!alike) return -1;
    return this.#later(a, b);
  }

  #outer(a: string, b: string, path: readonly Joint[]): string | undefined {
    const mate = this.shape.net.glue.find(
      ({ from, to }) => (from === a && to === b) || (from === b && to === a),
    );
    if (this.#isTab(a) !== this.#isTab(b)) return this.#isTab(a) ? b : a;
    if (mate) return mate.to;
    if (path.length < 2 || this.#body.has(a) === this.#body.has(b)) return undefined;
    return this.#body.has(a) ? a : b;
  }

  #isTab(panel: string): boolean {
    return panelOf(this.shape.net, panel).role === 'tab';
  }

  #later(a: string, b: string): 1 | -1 {
    const [first, second] = [this.#ownFold(a), this.#ownFold(b)];
    const [turnA, turnB] = [first, second].map((fold) => (fold && this.#turnOf.get(fold)) ?? -1);
    const outward = (fold: Fold | undefined): 1 | -1 => (fold?.direction === 'valley' ? -1 : 1);
    if ((turnB ?? 0) >= (turnA ?? 0)) return outward(second);
    return outward(first) === 1 ? -1 : 1;
  }

  /** The fold a panel turned about last on its way from the base. */
  #ownFold(panel: string): Fold | undefined {
    return pathBetween(this.shape.net, this.shape.base, panel)?.at(-1)?.fold;
  }
}

/**
 * How many layers of paper up (outward from the start) a path of flat folds leads; undefined for a path that has any
 * other fold in it. Two flaps on one base come out at 0: what is folded first decides.
 */
function flatSteps(path: readonly Joint[]): number | undefined {
  if (path.length === 0 || !path.every(({ fold }) => isFlatOn(fold))) return undefined;
  let facing = 1;
  let steps = 0;
  for (const { fold } of path) {
    steps += signedAngle(fold) > 0 ? -facing : facing;
    facing = -facing;
  }
  return steps;
}
