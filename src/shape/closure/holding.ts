import type { Length } from '../../measure/length.ts';
import { edgesOf } from '../flat-polygon.ts';
import { type FoldedShape, foldedPanelOf, foldIn } from '../folded-shape.ts';
import type { Fold, Net } from '../net.ts';
import { branchOf, foldBetween, type PanelTree, panelForest } from '../panel-tree.ts';
import { distanceFromLine } from '../space.ts';
import { type Glued, glueFor } from './glue-lines.ts';
import { loosePanels } from './motion.ts';
import { tolerance } from './tolerance.ts';
import { type Touch, touchOf } from './touch.ts';

/** Panels of a folded shape that nothing holds and nothing says are to move: one cause. */
export type Unheld = {
  /**
   * `seam`: walls that come round and are not stuck; `no tab`: two that meet edge to edge; `end`: the flaps of an end
   * that is to be closed; `flaps`: some of an end whose others are stuck; `panels`: any that meet and may part again; `pocket`: the sides of one that
   * is glued nowhere.
   */
  readonly kind: 'seam' | 'no tab' | 'end' | 'flaps' | 'panels' | 'pocket';
  readonly panels: readonly string[];
  /** What, glued, would hold them, each to what it lies on. */
  readonly glue: readonly Glued[];
  /** What is stuck closes the end without them. */
  readonly covered?: true;
};

/** A folded shape, and what is asked of it to tell what should be held. */
export class Holding {
  readonly shape: FoldedShape;
  readonly net: Net;
  readonly caliper: Length;
  /** Panels that move and are not meant to. */
  readonly loose: ReadonlySet<string>;
  readonly #allowed: number;
  readonly #tree: PanelTree;

  constructor(shape: FoldedShape, caliper: Length) {
    this.shape = shape;
    this.net = shape.net;
    this.caliper = caliper;
    this.#allowed = tolerance(caliper).mm;
    this.#tree = panelForest(shape.net, shape.base).trees[0] ?? { root: shape.base, joints: [] };
    const meant = this.branches(shape.net.opens ?? []);
    this.loose = new Set([...loosePanels(shape)].filter((panel) => !meant.has(panel)));
  }

  /** Panels, and all that hangs on each when the shape is held at its base. */
  branches(panels: readonly string[]): ReadonlySet<string> {
    return new Set(panels.flatMap((panel) => [...branchOf(this.#tree, panel)]));
  }

  /** Whether a panel hangs on one of some others. */
  hangsOn(panel: string, others: readonly string[]): boolean {
    return this.#tree.joints.some(({ child, parent }) => child === panel && others.includes(parent));
  }

  /** How two panels meet that no fold joins. */
  meet(first: string, second: string): Touch | undefined {
    if (first === second || foldBetween(this.net, first, second)) return undefined;
    return touchOf(this.shape, [first, second], this.#allowed);
  }

  /** Whether two panels each have an edge that lies on the line of a fold. */
  bothEndOn(fold: Fold, first: string, second: string): boolean {
    const line = foldIn(this.shape, fold);
    return [first, second].every((id) =>
      edgesOf(foldedPanelOf(this.shape, id).corners).some((edge) =>
        edge.every((end) => distanceFromLine(line, end) <= this.#allowed),
      ),
    );
  }

  /** What a panel lies on, and could be stuck to. */
  liesOn(panel: string): readonly string[] {
    return this.net.panels.flatMap(({ id }) => (this.meet(panel, id) === 'face' ? [id] : []));
  }

  /** Whether a panel lies on another, which it could be stuck to. */
  liesOnOther(panel: string): boolean {
    return this.liesOn(panel).length > 0;
  }

  /** What, glued, would hold some panels. */
  glueFor(panels: readonly string[]): readonly Glued[] {
    return glueFor(this.shape, panels, this.#allowed);
  }
}
