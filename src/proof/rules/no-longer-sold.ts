import type { Length, Unit } from '../../measure/length.ts';
import { fitsWithin, quarterTurned, type Size } from '../../measure/size.ts';
import type { Project } from '../../project/model.ts';
import { writeName } from '../../project/ref.ts';
import type { At, Place } from '../../project/source.ts';
import type { PaperWeight, Stock } from '../../project/stock.ts';
import { caliperOf } from '../../shape/caliper.ts';
import { keptUpright } from '../../shape/keep-upright.ts';
import { type Nets, sheetsOf } from '../../shape/sheets.ts';
import type { Rule } from '../rule.ts';
import { sayCaliper, sayList, saySize } from '../words.ts';

type Facts = {
  readonly name: string;
  readonly until: string;
  readonly session: string;
  /** Where the session stands. */
  readonly sessionAt: Place;
  /** What takes its place, as it is called. */
  readonly instead?: string;
  readonly changes: readonly Change[];
  readonly unit: Unit;
};

/** What is other with the substitute. */
type Change =
  | { readonly what: 'color'; readonly from: string; readonly to: string }
  | { readonly what: 'weight'; readonly from: PaperWeight; readonly to: PaperWeight }
  | { readonly what: 'caliper'; readonly from: Length; readonly to: Length }
  | { readonly what: 'sheet'; readonly from: readonly Size[]; readonly to: readonly Size[] }
  | { readonly what: 'too large'; readonly pieces: readonly string[] };

export const noLongerSold: Rule<Facts> = {
  severity: 'warning',
  summary: 'What a session needs can still be had on its day.',
  why: 'A paper that is discontinued in spring is missing at the session in summer. Say `until:` of a stock or a supply, and `instead:` what takes its place: whatever changes with it is listed here, so that you can buy the old one in time or change to the new one at leisure.',
  fails: {
    head: 'session: 2027-06-10',
    stock:
      'cream: { sheet: 8 1/2 x 11, weight: 80 lb cover, until: 2027-03-31, instead: ivory }\nivory: { sheet: 8 1/2 x 11, weight: 65 lb cover }',
    pieces: 'front: { stock: cream, cut: 3 x 4 }',
    blames: '2027-03-31',
  },
  passes: { with: 'session: 2027-03-31', insteadOf: 'session: 2027-06-10' },
  ownEditionOnly: true,
  *check({ project, shapes: { nets } }) {
    const { session, unit } = project;
    if (!session) return;
    const isLate = (until: At<string> | undefined): until is At<string> =>
      until !== undefined && until.value < session.value;
    const common = { session: session.value, sessionAt: session.at, unit };
    for (const { item, until, instead } of project.supplies)
      if (isLate(until))
        yield {
          at: until.at,
          facts: {
            ...common,
            name: item.value,
            until: until.value,
            ...(instead && { instead: instead.value }),
            changes: [],
          },
        };
    for (const stock of usedStocks(project)) {
      const { until, instead, name } = stock;
      if (!isLate(until)) continue;
      const substitute = instead && project.substitutes.get(instead.value);
      const changes = substitute ? changesTo(stock, substitute, project, nets) : [];
      yield {
        at: until.at,
        facts: {
          ...common,
          name,
          until: until.value,
          ...(substitute && { instead: substitute.name }),
          changes,
        },
      };
    }
  },
  say: ({ name, until, session, sessionAt, instead, changes, unit }) => {
    const said = changes.map((change) => sayChange(change, unit));
    const consequences = said.length > 0 ? `: ${said.join('; ')}` : '';
    return {
      message: `${name} can be had until ${until}, but the session is on ${session}`,
      remedy: instead
        ? `get enough of it by then, or take ${instead} in its place${consequences}`
        : 'get enough of it by then, or say with "instead:" what takes its place',
      notes: [{ message: 'the session is here', at: sessionAt }],
    };
  },
};

function usedStocks({ pieces, stock }: Project): readonly Stock[] {
  const named = new Set([...pieces.values()].map((piece) => piece.stock?.value));
  return [...stock.values()].filter(({ id }) => named.has(id.value));
}

/** What is known of both, and other. */
function changesTo(old: Stock, substitute: Stock, project: Project, nets: Nets): readonly Change[] {
  const [color, newColor] = [old.color?.value, substitute.color?.value];
  const [weight, newWeight] = [old.weight?.value, substitute.weight?.value];
  const [caliper, newCaliper] = [caliperOf(old).thickness, caliperOf(substitute).thickness];
  const [sheets, newSheets] = [old.sheets.map(sizeOf), substitute.sheets.map(sizeOf)];
  const [from, to] = [sheets.map(keyOf).join(), newSheets.map(keyOf).join()];
  const large = tooLarge(old, substitute, project, nets);
  return [
    ...(color && newColor && color !== newColor
      ? [{ what: 'color', from: color, to: newColor } as const]
      : []),
    ...(weight && newWeight && JSON.stringify(weight) !== JSON.stringify(newWeight)
      ? [{ what: 'weight', from: weight, to: newWeight } as const]
      : []),
    ...(caliper.equals(newCaliper) ? [] : [{ what: 'caliper', from: caliper, to: newCaliper } as const]),
    ...(from === to || to === '' ? [] : [{ what: 'sheet', from: sheets, to: newSheets } as const]),
    ...(large.length > 0 ? [{ what: 'too large', pieces: large } as const] : []),
  ];
}

function sizeOf({ size: { width, height } }: Stock['sheets'][number]): Size {
  return { width: width.value, height: height.value };
}

function keyOf({ width, height }: Size): string {
  return `${width} x ${height}`;
}

/** The pieces that no sheet of the substitute is large enough for. */
function tooLarge(old: Stock, substitute: Stock, { pieces }: Project, nets: Nets): readonly string[] {
  const sheets = substitute.sheets.map(sizeOf);
  if (sheets.length === 0) return [];
  const turns = keptUpright(substitute) === undefined;
  const fits = (size: Size): boolean =>
    sheets.some((sheet) => fitsWithin(size, sheet) || (turns && fitsWithin(quarterTurned(size), sheet)));
  return [...pieces].flatMap(([piece, { stock }]) =>
    stock?.value === old.id.value
      ? sheetsOf(nets, piece).flatMap(({ name: part, net }) =>
          fits(net.size) ? [] : [writeName({ piece, part })],
        )
      : [],
  );
}

function sayChange(change: Change, unit: Unit): string {
  switch (change.what) {
    case 'color':
      return `its color is ${change.to}, not ${change.from}`;
    case 'weight':
      return `it weighs ${sayWeight(change.to)}, not ${sayWeight(change.from)}`;
    case 'caliper':
      return `it is ${sayCaliper(change.to, unit)} thick, not ${sayCaliper(change.from, unit)}, so proof the project with it`;
    case 'sheet':
      return `its sheets are ${saySizes(change.to, unit)}, not ${saySizes(change.from, unit)}`;
    case 'too large':
      return `${sayList(change.pieces)} cannot be cut from its sheets`;
  }
}

function saySizes(sizes: readonly Size[], unit: Unit): string {
  return sayList(
    sizes.map((size) => saySize(size, unit)),
    'or',
  );
}

function sayWeight(weight: PaperWeight): string {
  return weight.kind === 'basis' ? `${weight.pounds} lb ${weight.grade}` : `${weight.gsm} gsm`;
}
