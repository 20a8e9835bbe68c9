import { Length, type Unit } from '../measure/length.ts';
import { printNear } from '../measure/print.ts';
import type { Size, Volume } from '../measure/size.ts';
import {
  bestPacking,
  type Cavity,
  type Leave,
  leaveOf,
  type Packing,
  type Triple,
  tightest,
} from '../shape/closure/packing.ts';
import { type Room, roomsOf } from '../shape/closure/rooms.ts';
import { tolerance } from '../shape/closure/tolerance.ts';
import { wallAllowance } from '../shape/forming/allowance.ts';
import { rulerOf } from '../shape/forming/ruler.ts';
import { sheetsOf } from '../shape/sheets.ts';
import { type BandSize, bandSizeOf } from './band-size.ts';
import { closedSheets, type FoldedSheet, foldedSheets } from './folded-sheets.ts';
import type { ProofContext } from './rule.ts';

/** Which of width, height and depth. */
type WayIndex = 0 | 1 | 2;

const WAYS: readonly (keyof Volume)[] = ['width', 'height', 'depth'];

/** The best way to put everything into one room, and how it fits. */
export type Fit = {
  readonly sheet: string;
  /** What everything takes, as width, height and depth; and what there is inside, without a depth where it lies flat. */
  readonly takes: Triple;
  readonly room: readonly Length[];
  /** What it is given to go round, where it is a band by its form. */
  readonly band?: BandSize;
  /** The way it is open: a band holds things of any length, where there is no box for them. */
  readonly open?: keyof Volume;
  /** What the depth of things comes off, where it lies flat. */
  readonly round?: keyof Size;
  /** Where it is tightest, and what is left there: less than nothing, or less than the paper takes. */
  readonly direction: WayIndex;
  readonly left: Length;
  /** What is left beyond what the paper takes up. */
  readonly spare: Length;
  /** Where its walls are not four: how many they are, and the way along them. */
  readonly prism?: Room['prism'];
  /**
   * It goes in, but a pillow box does not bulge enough for it, or it stands out of a bag or a tray; or it goes in only if
   * it is round, or not in even rows, between walls that are not four.
   */
  readonly but?: 'bulges' | 'stands out' | 'is round' | 'lies anyhow';
};

/** Equal things that are to go in, and the piece that is to take them, where one is named. */
export type Load = { readonly item: Triple; readonly count: number; readonly into?: string };

/** How a load fits where it fits best; undefined where nothing makes a room for it. */
export function bestFit(context: ProofContext, load: Load): Fit | undefined {
  const [best] = fitsOf(context, load).toSorted(
    (first, second) => goesIn(second) - goesIn(first) || second.spare.compare(first.spare),
  );
  return best;
}

/** 1 for what can be put in somehow, 0 for what cannot, or may not. */
function goesIn({ but, left }: Fit): 0 | 1 {
  return (but !== undefined && but !== 'lies anyhow') || left.sign >= 0 ? 1 : 0;
}

/** Whether a piece is known to have no room: it is there, and it closes as far as it folds. */
export function isRoomless(context: ProofContext, piece: string): boolean {
  const isOf = ({ of }: FoldedSheet): boolean => of.piece === piece;
  const isThere = context.shapes.nets.has(piece);
  return isThere && foldedSheets(context).filter(isOf).length === closedSheets(context).filter(isOf).length;
}

/** How a load fits in each piece, or in the one that is named: in what of it is closed, if anything is. */
function fitsOf(context: ProofContext, load: Load): readonly Fit[] {
  const all = closedSheets(context).filter(({ of }) => (load.into ?? of.piece) === of.piece);
  const pieces = [...new Set(all.map(({ of }) => of.piece))];
  return pieces.flatMap((piece) => {
    const sheets = all.filter(({ of }) => of.piece === piece);
    // What has a lid or a sleeve is to be closed.
    const canStandOut = sheetsOf(context.shapes.nets, piece).length === 1;
    const fits = sheets.flatMap((sheet) => fitsIn(sheet, load, canStandOut));
    const closed = fits.filter(({ open }) => open === undefined);
    return closed.length > 0 ? closed : fits;
  });
}

function fitsIn(sheet: FoldedSheet, { item, count }: Load, canStandOut: boolean): readonly Fit[] {
  const packed = (room: Room, cavity: Cavity, leave?: Leave): Fit =>
    fitIn(sheet, room, bestPacking(item, count, cavity, leave));
  return roomsOf(sheet.net).map((room) => {
    const { cavity, leave, snugly } = room;
    const mouth = canStandOut ? room.mouth : undefined;
    const fit = packed(room, cavity, leave);
    if (fit.left.sign >= 0) {
      const snug = snugly && packed(room, cavity, snugly);
      return snug && snug.left.sign < 0 ? { ...snug, but: 'bulges' } : fit;
    }
    const left = leaveOf(cavity, leave);
    const open = mouth && packed(room, openedAt(cavity, mouth), (block) => openedAt(left(block), mouth));
    if (open && open.left.sign >= 0) return standingOut(open, mouth);
    if (!room.prism) return fit;
    if (count > 1) return { ...fit, but: 'lies anyhow' };
    return goesInRound(item, room, mouth !== undefined) ? { ...fit, but: 'is round' } : fit;
  });
}

/** Whether one thing that is as wide as it is deep goes between walls that are not four if it is round, as a jar is. */
function goesInRound(item: Triple, { size, prism }: Room, canStandOut: boolean): boolean {
  const [width, height, across] = size;
  const run = prism?.along === 'height' ? height : width;
  return item.some((height, way) => {
    const [one, other] = item.filter((_, index) => index !== way);
    const isRound = one && other && across && one.equals(other) && !one.greaterThan(across);
    return isRound && run && (canStandOut || !height.greaterThan(run));
  });
}

function fitIn(sheet: FoldedSheet, { size, open, round, prism }: Room, packing: Packing): Fit {
  const exact = tightest(packing);
  // A pocket gives a little: what is as wide as it goes in, but only just.
  const isJust = round !== undefined && exact.sign < 0 && !exact.abs().greaterThan(tolerance(sheet.caliper));
  const left = isJust ? Length.zero : exact;
  const { item, rows } = packing;
  const band = bandSizeOf(sheet);
  return {
    sheet: sheet.name,
    takes: [item[0].times(rows[0]), item[1].times(rows[1]), item[2].times(rows[2])],
    room: size,
    ...(band && { band }),
    ...(open && { open }),
    ...(round && { round }),
    ...(prism && { prism }),
    direction: packing.clearance.findIndex((each) => each?.equals(exact)) as WayIndex,
    left,
    spare: left.minus(round || open ? sheet.caliper : paperWithin(sheet)),
  };
}

/** What the paper takes up of the room in a box: of one given by its inside, as much as its score lines allow for. */
function paperWithin({ body, caliper, of }: FoldedSheet): Length {
  const isInside = body.kind === 'form' && body.settings.has('inside');
  return isInside ? wallAllowance(rulerOf(of.unit), caliper, 2) : caliper;
}

function openedAt([width, height, depth]: Cavity, mouth: keyof Volume): Cavity {
  const unless = (way: keyof Volume, length: Length | undefined): Length | undefined =>
    way === mouth ? undefined : length;
  return [unless('width', width), unless('height', height), unless('depth', depth)];
}

/** What goes in, but for what stands out of the end that is open. */
function standingOut(fit: Fit, mouth: keyof Volume): Fit {
  const direction = WAYS.indexOf(mouth) as WayIndex;
  const left = (fit.room[direction] ?? Length.zero).minus(fit.takes[direction]);
  return { ...fit, direction, left, spare: left, but: 'stands out' };
}

/** Whether something stands out by so much that it falls over: it is held by less than a fourth. Common practice, no source. */
export function topples({ takes, direction, left }: Pick<Fit, 'takes' | 'direction' | 'left'>): boolean {
  return left.abs().greaterThan(takes[direction].times(3, 4));
}

/** `has 6 walls with a circle of 2 5/8 in between them, 4 in high`, behind the name of what has them. */
export function sayPrism(
  [width, height, across]: readonly Length[],
  { sides, along }: NonNullable<Room['prism']>,
  unit: Unit,
): string {
  const [run, adjective] = along === 'height' ? [height, 'high'] : [width, 'long'];
  const circle = printNear(across ?? Length.zero, unit);
  return `has ${sides} walls with a circle of ${circle} between them, ${printNear(run ?? Length.zero, unit)} ${adjective}`;
}
