import { Length } from '../../measure/length.ts';
import type { Size, Volume } from '../../measure/size.ts';
import type { Net } from '../net.ts';
import { type Cavity, type Leave, leaveOf, type Triple } from './packing.ts';
import { depthOver, type Pocket, type PocketWay, pocketsOf } from './pocket.ts';
import { longestWithin, type Prism, prismOf, roundWithin } from './prism.ts';
import { bodyOf, mouthOf, openWay } from './room.ts';

/**
 * Room for what is put in: how far it reaches each way, width, height and (unless it lies flat) depth; and what is left
 * of it. Paper's thickness is not taken off.
 */
export type Room = {
  readonly size: readonly Length[];
  /** The way it is open, so that things may stick out. */
  readonly open?: keyof Volume;
  /** The way it is open at one end, so that things may stand out unless something else goes over it. */
  readonly mouth?: keyof Volume;
  /** Where it lies flat: what the depth of things comes off, since the paper goes round them. */
  readonly round?: keyof Size;
  readonly cavity: Cavity;
  /** Where it is not the difference of lengths. */
  readonly leave?: Leave;
  /** Where its walls are not four: how many they are, and the way along them. */
  readonly prism?: { readonly sides: number; readonly along: keyof Volume };
  /** Of a pillow box: the same, and what its bulging walls leave. */
  readonly snugly?: Leave;
};

/** Every room of a folded net: the inside of a box, a tray, a band or a bag; pockets of flat paper. */
export function roomsOf(net: Net): readonly Room[] {
  const [open, mouth] = [openWay(net), mouthOf(net)];
  const ends = { ...(open && { open }), ...(mouth && { mouth }) };
  const body = bodyOf(net);
  if (body) {
    const { width, height, depth } = body;
    return [{ size: [width, height, depth], cavity: endedBy(body, open), ...ends }];
  }
  const prism = prismOf(net);
  return prism ? [{ ...prismRoom(prism, open), ...ends }] : pocketsOf(net).map(pocketRoom);
}

/** What is left of a room beyond a block of things, pressed open if it is a pillow box. */
export function leftIn({ snugly, leave, cavity }: Room, block: Triple): Cavity {
  return (snugly ?? leaveOf(cavity, leave))(block);
}

function endedBy({ width, height, depth }: Volume, open: keyof Volume | undefined): Cavity {
  return [
    open === 'width' ? undefined : width,
    open === 'height' ? undefined : height,
    open === 'depth' ? undefined : depth,
  ];
}

/** A room whose walls are not four: what is longer one way can be less so the other. */
function prismRoom(prism: Prism, open: keyof Volume | undefined): Room {
  const { run, sides, lines } = prism;
  const across = roundWithin(prism);
  const longest = longestWithin(prism, Length.zero);
  const isUpright = lines === 'upright';
  const room = (round: Length): Volume =>
    isUpright ? { width: round, height: run, depth: round } : { width: run, height: round, depth: round };
  const leave = ([wide, high, deep]: Triple): Cavity => {
    const other = isUpright ? wide : high;
    const [one, two] = [longestWithin(prism, deep).minus(other), longestWithin(prism, other).minus(deep)];
    return endedBy(
      isUpright
        ? { width: one, height: run.minus(high), depth: two }
        : { width: run.minus(wide), height: one, depth: two },
      open,
    );
  };
  const { width, height, depth } = room(across);
  const along = isUpright ? 'height' : 'width';
  return {
    size: [width, height, depth],
    cavity: endedBy(room(longest), open),
    leave,
    prism: { sides, along },
  };
}

function pocketRoom(pocket: Pocket): Room {
  const { width, height, rise } = pocket;
  const left = ({ extent, isClosed, isRound }: PocketWay, size: Length, depth: Length): Length | undefined =>
    isClosed ? extent.minus(size).minus(isRound ? depth : Length.zero) : undefined;
  const leave = ([across, upright, depth]: Triple): Cavity => [
    left(width, across, depth),
    left(height, upright, depth),
    undefined,
  ];
  const openWays = (['width', 'height'] as const).filter((way) => !pocket[way].isClosed);
  const [open] = openWays;
  const cavity: Cavity = [
    width.isClosed ? width.extent : undefined,
    height.isClosed ? height.extent : undefined,
    Length.max(width.extent, height.extent),
  ];
  const round = width.isRound ? 'width' : 'height';
  const room: Room = { size: [width.extent, height.extent], ...(open && { open }), round, cavity, leave };
  if (!rise) return room;
  const bulging = { ...pocket, rise };
  const snugly = (block: Triple): Cavity => {
    const [across, upright] = leave(block);
    const around = block[round === 'width' ? 0 : 1];
    return [across, upright, depthOver(around, bulging).minus(block[2])];
  };
  return { ...room, snugly };
}
