import { Length } from '../../measure/length.ts';
import type { Fold, Net } from '../net.ts';
import { foldsOf } from '../panel-tree.ts';
import { isFlatOn, lineOf, reachFrom, signedAngle } from '../tube.ts';
import { type FlatFlap, flatFlaps } from './flat-flaps.ts';
import { twinFlaps } from './twins.ts';

/** A flap folded flat to one face of what it hangs on, and others, which it is like, to the other. */
type FlatWay = {
  readonly panel: string;
  readonly fold: Fold;
  readonly others: readonly string[];
  /** They would meet, folded alike, as gates do; else it is more than likely a slip. */
  readonly areGates: boolean;
};

/** How closely gates meet. */
const CLOSELY: Length = Length.of(1, 16, 'in');

/** Flat flaps that fold the other way than their like. Of what is glued the proof of the glue tells. */
export function flatWays(net: Net): readonly FlatWay[] {
  return [...closingFlaps(net), ...unlikeTwins(net)];
}

/** The flap of an envelope that is folded to its front: the other way than all that hangs where it does. */
function closingFlaps(net: Net): FlatWay[] {
  return flatFlaps(net).flatMap((flap) => {
    const others = foldsOf(net, flap.on).filter((fold) => fold !== flap.fold);
    const isAlone = others.every((fold) => isFlatOn(fold) && turn(fold) === -turn(flap.fold));
    if (net.glue.length === 0 || isGlued(net, flap) || others.length < 2 || !isAlone) return [];
    const names = others.flatMap(({ panels }) => panels.filter((panel) => panel !== flap.on));
    return [{ panel: flap.panel, fold: flap.fold, others: names, areGates: false }];
  });
}

function unlikeTwins(net: Net): FlatWay[] {
  return twinFlaps(net).flatMap(([one, other]) => {
    if (turn(one.fold) === turn(other.fold)) return [];
    const areGates = one.on === other.on;
    if (areGates && (isGlued(net, one) || isGlued(net, other) || !meet(net, one, other))) return [];
    return [{ panel: one.panel, fold: one.fold, others: [other.panel], areGates }];
  });
}

function meet(net: Net, { panel, on, fold }: FlatFlap, other: FlatFlap): boolean {
  const [across, one, two] = [on, panel, other.panel].map((each) => reachFrom(lineOf(fold), net, each));
  return !!across && !!one && !!two && !across.minus(one).minus(two).abs().greaterThan(CLOSELY);
}

function isGlued({ glue }: Net, { panel }: FlatFlap): boolean {
  return glue.some(({ from, to }) => from === panel || to === panel);
}

function turn(fold: Fold): number {
  return Math.sign(signedAngle(fold));
}
