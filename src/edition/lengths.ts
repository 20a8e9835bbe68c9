import type { Length } from '../measure/length.ts';
import type { Piece } from '../project/model.ts';
import { EDGES } from '../project/net-as-written.ts';
import { writeName } from '../project/ref.ts';
import { sayCorners } from '../proof/words.ts';
import { boxSize, type Net, outlineOf } from '../shape/net.ts';
import type { Layer } from '../shape/shapes.ts';
import { sheetsOf } from '../shape/sheets.ts';
import { type Edition, type Editions, pairs, type Twin } from './editions.ts';

/** Lengths that belong together, such as the sides of a size, and what each is called: `front width`. */
type TwinGroup = readonly (Twin & { readonly name: string })[];

type NamedLength = { readonly name: string; readonly length: Length };

/** Every length of a project in both its editions, by importance: what is cut, what is folded, what shows. */
export function twinsOf({ inch, metric }: Editions): readonly TwinGroup[] {
  const others = lengthsOf(metric);
  return lengthsOf(inch).flatMap((group, index) => {
    const other = others[index];
    if (other?.length !== group.length) return [];
    const twins = pairs({ inch: group, metric: other });
    return [
      twins.map((each) => ({ name: each.inch.name, inch: each.inch.length, metric: each.metric.length })),
    ];
  });
}

/** In an order both editions share. */
function lengthsOf({ project, shapes }: Edition): (readonly NamedLength[])[] {
  const pieces = [...project.pieces.values()];
  const nets = [...project.pieces.keys()].flatMap((id) =>
    sheetsOf(shapes.nets, id).map(({ name, net }) => ({
      id,
      sheet: writeName({ piece: id, part: name }),
      net,
    })),
  );
  return [
    ...nets.map(({ sheet, net: { size } }) => sides(sheet, [size.width, size.height])),
    ...nets.flatMap(({ id, net }) => panelLengths(id, net)),
    ...nets.flatMap(({ id, net }) => openingLengths(id, net)),
    ...nets.flatMap(({ id, net }) => popUpLengths(id, net)),
    ...shapes.layers.map(revealLengths),
    ...nets.flatMap(({ sheet, net }) => scoreLengths(sheet, net)),
    ...nets.map(({ sheet, net }) => shapeLengths(sheet, net)),
    ...pieces.flatMap(writtenLengths),
    ...nets.flatMap(({ sheet, net }) => decorationLengths(sheet, net)),
    sides('what it holds', project.holds?.size?.map(({ value }) => value) ?? []),
  ];
}

function panelLengths(id: string, { panels }: Net): (readonly NamedLength[])[] {
  return panels.map((panel) => {
    const { width, height } = boxSize(panel.box);
    return sides(`${id}.${panel.id}`, [width, height]);
  });
}

function openingLengths(id: string, { openings = [] }: Net): (readonly NamedLength[])[] {
  return openings.flatMap(({ name, size, margins, shape, corners = [] }) => [
    sides(`${id}.${name}`, [size.width, size.height]),
    Object.entries(shape?.lengths ?? {}).map(([key, length]) => ({ name: `${id}.${name} ${key}`, length })),
    ...corners.map((each) => [
      { name: `${id}.${name} ${sayCorners(each.corners)}`, length: each.radius.value },
    ]),
    ...Object.entries(margins).map(([side, length]) => [{ name: `${id}.${name} from ${side}`, length }]),
  ]);
}

function popUpLengths(id: string, { popUps = [] }: Net): (readonly NamedLength[])[] {
  return popUps.flatMap(({ name, width, depths, ends }) => [
    sides(`${id}.${name}`, [width, ...depths]),
    ...ends.map((length, end) => [{ name: `${id}.${name} from end ${end + 1}`, length }]),
  ]);
}

function revealLengths({ piece, reveals, border }: Layer): readonly NamedLength[] {
  const sides = (['left', 'right', 'top', 'bottom'] as const).map((side) => ({
    name: `${piece.id.value} reveal ${side}`,
    length: reveals[side].abs(),
  }));
  return border ? [...sides, { name: `${piece.id.value} reveal`, length: border.least }] : sides;
}

function scoreLengths(sheet: string, { scores, slants = [] }: Net): (readonly NamedLength[])[] {
  const ends = slants.flatMap(({ from, to }) => [from.x, from.y, to.x, to.y]);
  return [
    ...scores.map(({ from, at, run }) => [
      ...at.map((length, index) => ({ name: `${sheet} score ${index + 1} from ${from}`, length })),
      ...(run ? [run.from, run.to].map((length) => ({ name: `${sheet} end of score`, length })) : []),
    ]),
    ends.map((length) => ({ name: `${sheet} end of slanted score`, length })),
  ];
}

/** Those of a tool and a stamp are the same in both editions; where its rows and images lie is not. */
function decorationLengths(sheet: string, { rows = [], impressions = [] }: Net): (readonly NamedLength[])[] {
  return [
    ...rows.flatMap(({ side, pitch, hole, depth, ends }) => {
      const lengths = { pitch, hole, depth, start: ends[0].abs(), end: ends[1].abs() };
      return Object.entries(lengths).map(([what, length]) => [{ name: `${sheet} ${side} ${what}`, length }]);
    }),
    ...impressions.flatMap(({ stamp, size, reveals }) => [
      sides(`${sheet} ${stamp}`, [size.width, size.height]),
      ...EDGES.map((side) => [{ name: `${sheet} ${stamp} from ${side}`, length: reveals[side].abs() }]),
    ]),
  ];
}

function shapeLengths(sheet: string, net: Net): readonly NamedLength[] {
  return Object.entries(outlineOf(net)?.lengths ?? {}).map(([key, length]) => ({
    name: `${sheet} ${key}`,
    length,
  }));
}

/** What was written of a piece and is not to be seen in its net. */
function writtenLengths({ id, body, corners = [], placement }: Piece): (readonly NamedLength[])[] {
  const { left, right, top, bottom } = placement;
  const settings = body.kind === 'form' ? [...body.settings] : [];
  return [
    ...corners.map((each) => [
      { name: `${id.value} ${sayCorners(each.corners)}`, length: each.radius.value },
    ]),
    Object.entries({ left, right, top, bottom }).flatMap(([side, distance]) =>
      distance ? [{ name: `${id.value} from ${side}`, length: distance.value.abs() }] : [],
    ),
    ...settings.map(([key, setting]) =>
      setting.kind === 'lengths'
        ? setting.lengths.map(({ value }) => ({ name: `${id.value} ${key}`, length: value }))
        : [],
    ),
  ];
}

function sides(name: string, lengths: readonly Length[]): readonly NamedLength[] {
  const words = ['width', 'height', 'depth'];
  return lengths.map((length, index) => ({ name: `${name} ${words[index]}`, length }));
}
