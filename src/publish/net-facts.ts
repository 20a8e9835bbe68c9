import { Length } from '../measure/length.ts';
import type { EditionName } from '../measure/ruler-unit.ts';
import { namesOf } from '../project/corners.ts';
import type { PublishedFact, PublishedValue } from '../project/ledger/ledger.ts';
import type { Piece } from '../project/model.ts';
import type { Cell, Edge } from '../project/net-as-written.ts';
import { cellName, columnName, parseCell } from '../shape/cells.ts';
import type { GridCuts, NamedOutline, Net, Opening } from '../shape/net.ts';
import { type SaidCuts, saidCuts } from '../words/cutting-words.ts';

/** What is cut of a sheet, and scored: its size, outline, score lines, openings and cuts. */
export function netFacts(
  of: Pick<PublishedFact, 'piece' | 'sheet'>,
  net: Net,
  { body }: Piece,
  edition: EditionName,
): PublishedFact[] {
  const { size, shape } = net;
  return [
    { ...of, what: 'size', [edition]: [size.width, size.height] },
    ...(shape ? [outlineFact(of, shape, edition)] : []),
    ...scoreFacts(of, net, edition),
    ...openingFacts(of, net, edition),
    ...(body.kind === 'flat' ? [] : [{ ...of, what: 'cuts', ...cutsOf(net, body, edition) } as const]),
  ];
}

/** The lines from each edge, then where those that are scored in part begin and end, and the angled ones likewise. */
function scoreFacts(
  of: Pick<PublishedFact, 'piece' | 'sheet'>,
  { scores, slants = [] }: Net,
  edition: EditionName,
): PublishedFact[] {
  const edges = [...new Set(scores.map(({ from }) => from))];
  const runs = scores.flatMap(({ run }) => (run ? [run.from, run.to] : []));
  const ends = slants.flatMap(({ from, to }) => [from.x, from.y, to.x, to.y]);
  return [
    ...edges.map(
      (from): PublishedFact => ({ ...of, what: 'scores', from, [edition]: linesFrom(scores, from) }),
    ),
    ...(runs.length > 0 ? [{ ...of, what: 'runs', [edition]: runs } as const] : []),
    ...(ends.length > 0 ? [{ ...of, what: 'slants', [edition]: ends } as const] : []),
  ];
}

/** Each once, as a line that is left out in the middle is scored in two runs. */
function linesFrom(scores: Net['scores'], edge: Edge): readonly Length[] {
  const [only, ...others] = scores.filter(({ from }) => from === edge).map(({ at }) => at);
  if (only && others.length === 0) return only;
  const all = [only ?? [], ...others].flat().toSorted((a, b) => a.compare(b));
  return all.filter((each, index) => !all[index - 1]?.equals(each));
}

function outlineFact(
  of: Pick<PublishedFact, 'piece' | 'sheet'>,
  { name, lengths, counts }: NamedOutline,
  edition: EditionName,
): PublishedFact {
  const [count] = Object.values(counts);
  const measures = Object.values(lengths);
  return {
    ...of,
    what: 'outline',
    word: name,
    ...(count !== undefined && { count }),
    ...(measures.length > 0 && { [edition]: measures }),
  };
}

/** Windows, slots and pop-ups, wherever they are; what a form punches is among its cuts. */
function openingFacts(
  of: Pick<PublishedFact, 'piece' | 'sheet'>,
  { openings = [], popUps = [] }: Net,
  edition: EditionName,
): PublishedFact[] {
  const cut = openings.filter(({ how }) => how !== 'punched');
  if (cut.length + popUps.length === 0) return [];
  const word = [
    ...cut.map(({ name, panel, shape, corners = [] }) => {
      const rounded = corners.flatMap((each) => namesOf(each.corners));
      return [name, panel, shape?.name ?? '', ...Object.values(shape?.counts ?? {}), ...rounded]
        .join(' ')
        .trim();
    }),
    ...popUps.map(({ name, panels }) => `${name} ${panels.join('|')}`),
  ].join('; ');
  const lengths = [
    ...cut.flatMap(({ margins: { left, top }, size, shape, corners = [] }) => [
      ...[left, top, size.width, size.height],
      ...Object.values(shape?.lengths ?? {}),
      ...corners.map(({ radius }) => radius.value),
    ]),
    ...popUps.flatMap(({ ends, width, depths }) => [ends[0], width, ...depths]),
  ];
  return [{ ...of, what: 'openings', word, [edition]: lengths }];
}

function cutsOf(net: Net, body: Piece['body'], edition: EditionName): PublishedValue {
  const cuts = saidCuts(body, net);
  return cuts ? { word: cutsText(cuts) } : { [edition]: cutBoxes(net) };
}

/** `trim A1, C1; slit A|B 1-2; taper tab`: the same however it was typed. */
function cutsText({ trim, slit, taper, shorten }: SaidCuts): string {
  const places = {
    trim: trim.map(placeName),
    slit: slit.map(slitText),
    taper: taper.map(placeName),
    shorten: shorten.map(placeName),
  };
  const said = Object.entries(places).filter(([, cells]) => cells.length > 0);
  return said.map(([how, cells]) => `${how} ${cells.toSorted().join(', ')}`).join('; ') || 'none';
}

/** A cell however it is typed; or the name of a panel. */
function placeName(place: Cell | string): string {
  const cell = typeof place === 'string' ? parseCell(place) : place;
  return cell ? cellName(cell) : String(place);
}

function slitText({ between, line, from, to }: GridCuts['slit'][number]): string {
  const [across, along] = [columnName, (row: number) => String(row + 1)];
  const [lines, cells] = between === 'columns' ? [across, along] : [along, across];
  return `${lines(line)}|${lines(line + 1)} ${cells(from)}-${cells(to)}`;
}

/** Left, right, top and bottom edge of each part that is cut away, then center and diameter of each punched hole. */
function cutBoxes({ waste, openings = [] }: Net): Length[] {
  return [
    ...waste.flatMap((outline) => [
      ...extentOf(outline.map(({ x }) => x)),
      ...extentOf(outline.map(({ y }) => y)),
    ]),
    ...openings.filter(({ how }) => how === 'punched').flatMap(holeOf),
  ];
}

function holeOf({ size, outline }: Opening): Length[] {
  const [left] = extentOf(outline.map(({ x }) => x));
  const [top] = extentOf(outline.map(({ y }) => y));
  return [left.plus(size.width.half()), top.plus(size.width.half()), size.width];
}

function extentOf([first = Length.zero, ...rest]: readonly Length[]): [Length, Length] {
  return [Length.min(first, ...rest), Length.max(first, ...rest)];
}
