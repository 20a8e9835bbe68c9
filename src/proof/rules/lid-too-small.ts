import { Length } from '../../measure/length.ts';
import { nextMark } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { Size } from '../../measure/size.ts';
import { languageOf, wordsIn } from '../../project/language.ts';
import type { Piece } from '../../project/model.ts';
import { wordFinder } from '../../project/prose/word-finder.ts';
import type { Place } from '../../project/source.ts';
import { restOf } from '../../shape/base-panel.ts';
import { caliperOf, stockOf } from '../../shape/caliper.ts';
import { wallsRound } from '../../shape/closure/room.ts';
import { boxSize, type Net } from '../../shape/net.ts';
import { panelOf } from '../../shape/panel-tree.ts';
import { ownNet } from '../../shape/sheets.ts';
import { lineOf } from '../../shape/tube.ts';
import type { OfPiece } from '../folded-sheets.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sayLength, saySize } from '../words.ts';

type Facts = OfPiece & {
  /** What it goes over, and where that is. */
  readonly over: string;
  readonly overAt: Place;
  /** The floors of both, between the score lines. */
  readonly sizes: readonly [Size, Size];
  /** How much larger the lid has to be, at a mark of the ruler. */
  readonly room: Length;
  /** It is so much smaller that it goes into it. */
  readonly goesIn: boolean;
};

/** What a lid needs to slide. Common practice, no source. */
const PLAY: Length = Length.of(1, 16, 'in');
/** Trays that differ by more than this in any way may not be meant for one another. Our judgment, no source. */
const ALIKE: Length = Length.of(1, 2, 'in');

export const lidTooSmall: Rule<Facts> = {
  severity: 'error',
  summary: 'A lid given by score lines is larger than the tray it goes over.',
  why: 'A lid scored to the exact size of its base does not go over it: the paper of both takes up room. This is checked if a project has just two trays given by score lines and one of them is called a lid.',
  fails: {
    pieces: `base:
  stock: cream
  cut: 6 x 5
  score: [{ from: left, at: [1] }, { from: right, at: [1] }, { from: top, at: [1] }, { from: bottom, at: [1] }]
  slit: [A|B 1, A|B 3, B|C 1, B|C 3]
  glue: { A1: B1, C1: B1, A3: B3, C3: B3 }
lid:
  stock: cream
  cut: 5 x 6
  score: [{ from: left, at: [1] }, { from: right, at: [1] }, { from: top, at: [1] }, { from: bottom, at: [1] }]
  slit: [A|B 1, A|B 3, B|C 1, B|C 3]
  glue: { A1: B1, C1: B1, A3: B3, C3: B3 }`,
    blames: 'lid',
  },
  passes: { with: '5 1/8 x 6 1/8', insteadOf: '5 x 6' },
  *check(context) {
    const { project } = context;
    const found = lidAndBase(context);
    if (!found) return;
    const [lid, base] = found;
    const [outer, inner] = [lid, base].map(({ piece }) => caliperOf(stockOf(piece, project)).thickness);
    if (!outer || !inner) return;
    // The lid's tabs lie inside its walls.
    const takes = (tabs: number): Length => outer.plus(inner).plus(outer.times(tabs));
    const byWhat = differences(lid, base);
    const goesOver = byWhat.every(({ by, tabs }) => by.greaterThan(takes(tabs)));
    if (goesOver || byWhat.some(({ by }) => by.abs().greaterThan(ALIKE))) return;
    const { unit } = project;
    const facts = { piece: lid.piece.id.value, over: base.piece.id.value, overAt: base.piece.id.at, unit };
    const room = nextMark(takes(Math.max(...byWhat.map(({ tabs }) => tabs))).plus(PLAY), rulerUnit(unit));
    const goesIn = byWhat.every(({ by }) => by.times(-1).greaterThan(takes(0)));
    yield { at: lid.piece.id.at, facts: { ...facts, sizes: [lid.floor, base.floor], room, goesIn } };
  },
  say: ({ piece, over, overAt, sizes: [own, other], room, goesIn, unit }) => {
    const remedy = `make ${piece} ${sayLength(room, unit)} wider and ${sayLength(room, unit)} longer than ${over} between its walls`;
    const sizes = `${piece} is ${saySize(own, unit)} between its walls and ${over} ${saySize(other, unit)}`;
    const notes = [{ message: `${over} is here`, at: overAt }];
    return goesIn
      ? {
          message: `${sizes}: it goes into it, and not over it`,
          remedy: `${remedy}, or call it something else if it is to go in`,
          notes,
          severity: 'warning',
        }
      : { message: `${sizes}, so it does not fit over it`, remedy, notes };
  },
};

/** A piece that folds into a tray, and its floor. */
type Tray = { readonly piece: Piece; readonly floor: Size; readonly tabs: TabsBetween };

/** How many walls of each pair have tabs glued to them: those that face each other across its width, and its height. */
type TabsBetween = Readonly<Record<keyof Size, number>>;

/** The one tray that is called a lid, and the only other. */
function lidAndBase({ workspace, project, shapes }: ProofContext): readonly [Tray, Tray] | undefined {
  const trays = [...project.pieces.values()].flatMap((piece): Tray[] => {
    const net = piece.body.kind === 'net' ? ownNet(shapes.nets, piece.id.value) : undefined;
    const rest = net && restOf(net);
    const isTray = rest?.lies === 'under' || rest?.lies === 'over';
    if (!net || !isTray) return [];
    return [{ piece, floor: boxSize(panelOf(net, rest.base).box), tabs: tabsBetween(net, rest.base) }];
  });
  const called = wordFinder(`lid, ${wordsIn(languageOf(project, workspace.site), 'reads-lid')}`);
  const lids = trays.filter(({ piece }) => called.test(`${piece.id.value} ${piece.name?.value ?? ''}`));
  const [lid, ...otherLids] = lids;
  const [base, ...others] = trays.filter((tray) => !lids.includes(tray));
  return lid && base && otherLids.length + others.length === 0 ? [lid, base] : undefined;
}

function tabsBetween(net: Net, base: string): TabsBetween {
  const mates = wallsRound(net, base).filter(({ panel }) =>
    net.glue.some(({ from, to }) => from === panel || to === panel),
  );
  const width = mates.filter(({ fold }) => lineOf(fold) === 'upright').length;
  return { width, height: mates.length - width };
}

/** How much larger a lid's floor is than another, the long way and the short one, and on how many walls there are tabs. */
function differences(lid: Tray, base: Tray): readonly { readonly by: Length; readonly tabs: number }[] {
  const ways = (['width', 'height'] as const).toSorted((a, b) => lid.floor[b].compare(lid.floor[a]));
  const others = [base.floor.width, base.floor.height].toSorted((a, b) => b.compare(a));
  return ways.map((way, index) => {
    const own = lid.floor[way];
    return { by: own.minus(others[index] ?? own), tabs: lid.tabs[way] };
  });
}
