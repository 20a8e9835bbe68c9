import { Length } from '../measure/length.ts';
import type { ImpressionAsWritten, PunchedEdge } from '../project/decoration.ts';
import type { Finding } from '../project/finding.ts';
import type { Piece, Project } from '../project/model.ts';
import { type Edge, isUpright } from '../project/net-as-written.ts';
import type { At } from '../project/source.ts';
import { supplyNamed } from '../project/supply-names.ts';
import { lieOn } from './lying.ts';
import { boxSize, type EdgeRow, type FlatBox, type Impression, type Net } from './net.ts';
import { rowAlong } from './punched-row.ts';
import { onlyPanel, partUnder, type Under } from './shapes.ts';
import type { Sheet } from './sheets.ts';

/** The nets of a piece with what is punched along their edges and stamped on them; and the named panels that are not there. */
export function decorate(
  piece: Piece,
  sheets: readonly Sheet[],
  { supplies }: Pick<Project, 'supplies'>,
): { readonly sheets: readonly Sheet[]; readonly findings: readonly Finding[] } {
  const { edge, impressions } = piece;
  if (edge.length + impressions.length === 0) return { sheets, findings: [] };
  const decorated = sheets.map((sheet) => {
    const { net } = sheet;
    const grounds = <T extends PunchedEdge | ImpressionAsWritten>(all: readonly T[]) =>
      all.flatMap((written) => {
        const ground = partDecorated(written, sheets);
        return ground?.net === net ? [{ ...ground, written }] : [];
      });
    const edges = grounds(edge);
    const rows = edges.flatMap((each) => {
      const beside = edges.filter(({ panel }) => panel === each.panel).map(({ written }) => written);
      return rowsOn(each, each.written, beside);
    });
    const stamped = grounds(impressions).map((each) => impressionOn(each, each.written, supplies));
    return { ...sheet, net: decoratedNet(net, rows, stamped) };
  });
  const findings = [...edge, ...impressions].flatMap(({ in: panel }) =>
    panel && sheets.length > 0 && !partUnder(sheets, panel.value) ? [findMissing(panel, piece, sheets)] : [],
  );
  return { sheets: decorated, findings };
}

function decoratedNet(net: Net, rows: readonly EdgeRow[], impressions: readonly Impression[]): Net {
  if (rows.length + impressions.length === 0) return net;
  return {
    ...net,
    ...(rows.length > 0 && { rows }),
    ...(impressions.length > 0 && { impressions }),
  };
}

/** What is decorated: a panel, or a sheet as a whole; and its box on the sheet. */
type Decorated = Pick<Under, 'net' | 'panel'> & { readonly box: FlatBox };

function partDecorated(
  { in: panel }: Pick<PunchedEdge, 'in'>,
  sheets: readonly Sheet[],
): Decorated | undefined {
  if (panel) {
    const under = partUnder(sheets, panel.value);
    return under?.panel && { ...under, box: under.panel.box };
  }
  const net = sheets[0]?.net;
  return net && { net, box: onlyPanel(net)?.box ?? boxOf(net) };
}

function findMissing(
  panel: At<string>,
  { id }: Piece,
  sheets: readonly Sheet[],
): Finding<'unknown-reference'> {
  const among = sheets.flatMap(({ net }) => net.panels.map((each) => each.name ?? each.id));
  const facts = { what: 'panel', name: panel.value, of: id.value, among };
  return { rule: 'unknown-reference', at: panel.at, facts };
}

/** All of the sheet: an outline may leave a single panel smaller than that. */
function boxOf({ size: { width, height } }: Net): FlatBox {
  return { left: Length.zero, top: Length.zero, right: width, bottom: height };
}

/** The rows of one entry; `beside` are all entries on the same paper. */
function rowsOn(ground: Decorated, written: PunchedEdge, beside: readonly PunchedEdge[]): readonly EdgeRow[] {
  const { panel } = ground;
  return written.along.map((side) => {
    const { box, cut } = edgeOf(ground, side);
    const length = boxSize(box)[isUpright(side) ? 'height' : 'width'];
    const depths = beside.filter(({ along }) => along.some((each) => isUpright(each) !== isUpright(side)));
    const round = depths.map(({ depth, hole }) => (depth ?? hole).value);
    // A row so deep that nothing would be left is no row to keep clear of.
    const clear = Length.max(cut, ...round.filter((depth) => depth.lessThan(length.half())));
    return { ...rowAlong({ side, length, cut, clear }, written), box, ...(panel && { panel }) };
  });
}

/**
 * The box whose side an edge is, and how far its corners are cut back along it. Of an outline that is straight there only
 * in part, as an arch at its sides, the edge is that part.
 */
function edgeOf(ground: Decorated, side: Edge): { readonly box: FlatBox; readonly cut: Length } {
  const { net, box } = ground;
  const [near, far] = cutBacks(ground, side);
  if (!net.shape || near.equals(far)) return { box, cut: Length.max(near, far) };
  const straight = isUpright(side)
    ? { ...box, top: box.top.plus(near), bottom: box.bottom.minus(far) }
    : { ...box, left: box.left.plus(near), right: box.right.minus(far) };
  return { box: straight, cut: Length.zero };
}

/** How far the corners at the two ends of a side are cut back along it. */
function cutBacks({ net, panel, box }: Decorated, side: Edge): readonly [near: Length, far: Length] {
  const [on, along, near, far] = isUpright(side)
    ? (['x', 'y', box.top, box.bottom] as const)
    : (['y', 'x', box.left, box.right] as const);
  const corners = (panel ? [panel] : net.panels).flatMap(({ outline }) => outline);
  const [first, ...rest] = corners.flatMap((corner) => (corner[on].equals(box[side]) ? [corner[along]] : []));
  if (!first) return [far.minus(near).half(), far.minus(near).half()];
  return [Length.min(first, ...rest).minus(near), far.minus(Length.max(first, ...rest))];
}

function impressionOn(
  { panel, box }: Decorated,
  written: ImpressionAsWritten,
  supplies: Project['supplies'],
): Impression {
  const size = { width: written.size.width.value, height: written.size.height.value };
  const { turn, reveals, corners, centered } = lieOn(boxSize(box), {
    size,
    placement: written.placement,
  });
  const onSheet = corners.map(({ x, y }) => ({ x: x.plus(box.left), y: y.plus(box.top) }));
  const { stamp, ink } = written;
  return {
    written,
    stamp: supplyNamed(supplies, 'stamp', stamp.value)?.item.value ?? stamp.value,
    ...(ink && { ink: supplyNamed(supplies, 'ink', ink.value)?.item.value ?? ink.value }),
    ...(panel && { panel }),
    size,
    turn,
    reveals,
    centered,
    corners: onSheet,
  };
}
