import { Length } from '../../measure/length.ts';
import type { Size, Volume } from '../../measure/size.ts';
import type { Net } from '../net.ts';
import type { Cavity, Leave, Triple } from './packing.ts';
import { depthOver, type Pocket, type PocketWay, pocketsOf } from './pocket.ts';
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
  /** Of a pillow box: the same, and what its bulging walls leave. */
  readonly snugly?: Leave;
};

/** Every room of a folded net: the inside of a box, a tray, a band or a bag; pockets of flat paper. */
export function roomsOf(net: Net): readonly Room[] {
  const body = bodyOf(net);
  if (!body) return pocketsOf(net).map(pocketRoom);
  const [open, mouth] = [openWay(net), mouthOf(net)];
  const { width, height, depth } = body;
  const ends = (way: keyof Volume): Length | undefined => (way === open ? undefined : body[way]);
  const cavity: Cavity = [ends('width'), ends('height'), ends('depth')];
  const room = { size: [width, height, depth], cavity };
  return [{ ...room, ...(open && { open }), ...(mouth && { mouth }) }];
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
