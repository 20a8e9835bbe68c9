import { foldedLength } from '../../measure/round.ts';
import { LEAST_GLUE } from '../closure/glue.ts';
import { foldSteps } from '../fold-order.ts';
import type { Net } from '../net.ts';
import { perNet } from '../per-net.ts';
import { tubesOf } from '../tube.ts';
import { heldApart, keptApart } from './meeting.ts';
import { comesBefore, type Move, movesOf } from './moves.ts';
import { OrderSearch } from './order.ts';
import { isTight, rolledLeaves } from './rolled.ts';
import type { Stack } from './stack.ts';
import { Stacker } from './stacker.ts';

/**
 * A net folded move by move, as near to the usual order as can be with nothing in the way; in the usual one where
 * something always is. Bent walls are stuck before they are bent, and lie flat. `caliper` is the paper's thickness in
 * millimeters.
 */
export const stackOf: (net: Net, caliper: number) => Stack = perNet((net, caliper: number) => {
  const { strips, ...unbent } = net;
  const stacker = stackerOf(strips ? unbent : net, net, caliper);
  const moves = inUsualOrder(stacker);
  const hasTightLeaf = (stack: Stack): boolean =>
    rolledLeaves(stack).some((leaf) => isTight(leaf, foldedLength(caliper)));
  for (const apart of [keptApart, heldApart]) {
    const isHindered = (stack: Stack): boolean =>
      stack.crossings.length > 0 || apart(stack, stacker.mates, LEAST_GLUE.mm).length > 0;
    const found = new OrderSearch(stacker, isHindered).find(moves);
    if (!found) continue;
    if (!hasTightLeaf(found)) return found;
    // Of leaves that are rolled up, the hands take the one that fits; a narrow one is a tab, and goes on last.
    const isTighter = (stack: Stack): boolean => isHindered(stack) || hasTightLeaf(stack);
    const looser = new OrderSearch(stacker, isTighter).find(moves);
    const hasTab = looser && rolledLeaves(looser).some(({ width, room }) => !width.greaterThan(room.half()));
    return looser && !hasTab ? looser : found;
  }
  return foldedAsUsual(stacker, moves);
});

/** The same of the strips of a bent net, as it is to be looked at. */
export const bentStackOf: (net: Net, caliper: number) => Stack = perNet((net, caliper: number) => {
  if (!net.strips) return stackOf(net, caliper);
  const stacker = stackerOf(net.strips, net, caliper);
  return foldedAsUsual(stacker, inUsualOrder(stacker));
});

/** The seam of a tube that nobody glued is one all the same. */
function stackerOf(sheet: Net, { glue }: Net, caliper: number): Stacker {
  return new Stacker(sheet, [...glue, ...tubesOf(sheet).map(({ mate }) => mate)], caliper);
}

function foldedAsUsual(stacker: Stacker, moves: readonly Move[]): Stack {
  return moves.reduce((stack, move) => stacker.after(stack, move), stacker.flat);
}

/** Within a step what hangs further out first, and what is stuck under something before that. */
function inUsualOrder(stacker: Stacker): readonly Move[] {
  const ordered: Move[] = [];
  const moves = movesOf(stacker.sheet, stacker.tree, foldSteps(stacker.sheet));
  while (ordered.length < moves.length) {
    const waiting = moves.filter((move) => !ordered.includes(move));
    const own = waiting.filter(({ step }) => step === waiting[0]?.step);
    const isNext = (move: Move): boolean =>
      !own.some((each) => each !== move && comesBefore(each, move, stacker.mates));
    const next = own.find(isNext) ?? own[0];
    if (!next) break;
    ordered.push(next);
  }
  return ordered;
}
