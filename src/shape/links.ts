import { Length } from '../measure/length.ts';
import type { Piece } from '../project/model.ts';
import type { Place } from '../project/source.ts';
import type { Made } from './closed-size.ts';
import { bodyOf, openWay } from './closure/room.ts';
import { roomsOf } from './closure/rooms.ts';
import type { Form } from './form.ts';
import { forms } from './forms/index.ts';
import type { Net } from './net.ts';
import { isSolid } from './outer-size.ts';
import { ownNet } from './sheets.ts';
import { tubesOf } from './tube.ts';

/** What one piece is to another, as the sheet says it: `holds: card`, `around: [card, envelope]`. */
const LINK_WAYS = ['holds', 'around'] as const;

/** One piece that another goes into, or that goes round it. */
export type Link = {
  readonly way: (typeof LINK_WAYS)[number];
  readonly holder: Piece;
  readonly held: Piece;
  /** How many of them go into one. */
  readonly count: number;
  /** Where the sheet says so; absent where it need not, for nothing else could be meant. */
  readonly said?: Place;
};

/** What goes into what and round what, in the order of the sheet. What goes in a circle, or isn't there, goes nowhere. */
export function linksOf(made: Made): readonly Link[] {
  const { pieces } = made.project;
  const circular = new Set(linkCircles(pieces).flatMap((circle) => circle.map(({ piece }) => piece)));
  const said = [...pieces.values()].flatMap((holder) =>
    LINK_WAYS.flatMap((way) =>
      holder[way].flatMap(({ value, at }): Link[] => {
        const held = pieces.get(value);
        if (!held || (circular.has(held) && circular.has(holder))) return [];
        return [{ way, holder, held, count: Math.ceil(held.count.value / holder.count.value), said: at }];
      }),
    ),
  );
  const named = new Set(said.flatMap(({ holder, held }) => [holder, held]));
  return [...said, ...meantAnyway(made, named)];
}

/** Whether a piece is a band by its form. */
export function goesRound(piece: Pick<Piece, 'body'>): boolean {
  return formOf(piece)?.goesRound === true;
}

/** Whether a piece is of a form that goes by mail in this way. */
export function isMailedAs(way: 'card' | 'envelope', piece: Piece): boolean {
  return formOf(piece)?.mailed === way;
}

function formOf({ body }: Pick<Piece, 'body'>): Form | undefined {
  return body.kind === 'form' ? forms.find(({ name }) => name === body.form.value) : undefined;
}

/**
 * The one card of a project goes into its one envelope, its one band round the one other thing, and its one sleeve round
 * the one tray that is about as large, unless the sheet says anything else of either.
 */
function meantAnyway({ project, shapes }: Made, named: ReadonlySet<Piece>): readonly Link[] {
  const loose = [...project.pieces.values()].flatMap((piece) => {
    const net = ownNet(shapes.nets, piece.id.value);
    return net && !piece.on ? [{ piece, net }] : [];
  });
  const isFree = (piece: Piece): boolean => !named.has(piece) && !isSpokenFor(piece, project);
  const link = (way: Link['way'], holders: readonly Loose[], things: readonly Loose[]): Link[] => {
    const [[holder, second], [held, other]] = [holders, things];
    if (!holder || !held || second || other) return [];
    if (!isFree(holder.piece) || named.has(held.piece)) return [];
    return [{ way, holder: holder.piece, held: held.piece, count: 1 }];
  };
  const envelopes = loose.filter(isEnvelope);
  const bands = loose.filter(isBand);
  const others = loose.filter((each) => !bands.includes(each));
  const [sleeves, trays] = [loose.filter(isSleeve), loose.filter(isTray)];
  const drawers = sleeves.flatMap((sleeve) => trays.filter((tray) => areAlike(sleeve, tray)));
  return [
    ...link('holds', envelopes, cardsAmong(loose)),
    ...link('around', bands, others),
    ...(trays.length === 1 ? link('around', sleeves, drawers) : []),
  ];
}

/** By its score lines: a tube that is open at both ends, or what has walls round a floor. */
function isSleeve({ piece: { body }, net }: Loose): boolean {
  return body.kind === 'net' && openWay(net) !== undefined;
}

function isTray({ piece: { body }, net }: Loose): boolean {
  return body.kind === 'net' && tubesOf(net).length === 0 && bodyOf(net) !== undefined;
}

/** A drawer that differs more from its sleeve may not be meant for it. Our judgment, no source. */
const ALIKE: Length = Length.of(1, 2, 'in');

/** Whether a sleeve is about as large round as a tray is along two of its three ways. */
function areAlike(sleeve: Loose, tray: Loose): boolean {
  const [round, size] = [bodyOf(sleeve.net), bodyOf(tray.net)];
  const open = openWay(sleeve.net);
  if (!round || !size || !open) return false;
  const [one, other] = (['width', 'height', 'depth'] as const).flatMap((way) =>
    way === open ? [] : [round[way]],
  );
  const isNear = (a: Length, b: Length | undefined): boolean =>
    b !== undefined && !a.minus(b).abs().greaterThan(ALIKE);
  return [size.width, size.depth].some(
    (across) =>
      (isNear(across, one) && isNear(size.height, other)) ||
      (isNear(across, other) && isNear(size.height, one)),
  );
}

/** Whether the project says what goes into a piece, or may mean this one. */
function isSpokenFor({ id }: Piece, { holds }: Made['project']): boolean {
  return holds !== undefined && (holds.in?.value ?? id.value) === id.value;
}

type Loose = { readonly piece: Piece; readonly net: Net };

function isEnvelope({ piece, net }: Loose): boolean {
  if (isMailedAs('envelope', piece)) return true;
  return (
    piece.body.kind === 'net' && roomsOf(net).some(({ round, open, snugly }) => round && !open && !snugly)
  );
}

function isBand({ piece }: Loose): boolean {
  return goesRound(piece);
}

/** What folds flat and is no envelope; where nothing does, what lies flat and is no strip. */
function cardsAmong(loose: readonly Loose[]): readonly Loose[] {
  const folded = loose.filter(
    (each) =>
      each.net.folds.length > 0 &&
      (isMailedAs('card', each.piece) ||
        (each.piece.body.kind === 'net' && !isSolid(each.net) && !isEnvelope(each))),
  );
  if (folded.length > 0) return folded;
  return loose.filter(({ piece, net }) => piece.body.kind === 'flat' && !isStrip(net));
}

/** A card is no longer than three times its width. Common practice, no source. */
function isStrip({ size: { width, height } }: Net): boolean {
  const [long, short] = [Length.max(width, height), Length.min(width, height)];
  return long.greaterThan(short.times(3));
}

/** A piece and what it is to another, in a circle: each to the next, the last to the first. */
type LinkCircle = readonly { readonly piece: Piece; readonly way: Link['way']; readonly at: Place }[];

/** Pieces that take one another in a circle, or one that takes itself. */
export function linkCircles(pieces: Made['project']['pieces']): readonly LinkCircle[] {
  const circles: LinkCircle[] = [];
  const done = new Set<Piece>();
  const walk = (piece: Piece, chain: LinkCircle): void => {
    const start = chain.findIndex((each) => each.piece === piece);
    if (start >= 0) circles.push(chain.slice(start));
    if (start >= 0 || done.has(piece)) return;
    for (const way of LINK_WAYS) {
      for (const { value, at } of piece[way]) {
        const next = pieces.get(value);
        if (next) walk(next, [...chain, { piece, way, at }]);
      }
    }
    done.add(piece);
  };
  for (const piece of pieces.values()) walk(piece, []);
  return circles;
}
