import type { Length, Unit } from '../../measure/length.ts';
import { type EditionName, editionIn } from '../../measure/ruler-unit.ts';
import type { Size } from '../../measure/size.ts';
import type { Project } from '../../project/model.ts';
import type { Place } from '../../project/source.ts';
import type { PaperUnit, PaperWeight, Stock, StockSheet } from '../../project/stock.ts';
import { caliperOf } from '../../shape/caliper.ts';
import { isSoldOut, papersSoldOut } from '../late.ts';
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
  | {
      readonly what: 'sheet';
      readonly edition: EditionName;
      readonly from: readonly Sold[];
      readonly to: readonly Sold[];
    };

/** A size of sheet in the unit it is sold by. */
type Sold = { readonly size: Size; readonly unit: PaperUnit };

export const noLongerSold: Rule<Facts> = {
  severity: 'warning',
  summary: 'What a session needs can still be had on its day.',
  why: 'A paper that is discontinued in spring is missing at the session in summer. Say `until:` of a stock or a supply, and `instead:` what takes its place: whatever changes with it is listed here, the sheets of each edition, so that you can buy the old one in time or change to the new one at leisure.',
  fails: {
    head: 'session: 2027-06-10',
    stock:
      'cream: { sheet: 8 1/2 x 11, weight: 80 lb cover, until: 2027-03-31, instead: ivory }\nivory: { sheet: 8 1/2 x 11, weight: 65 lb cover }',
    pieces: 'front: { stock: cream, cut: 3 x 4 }',
    blames: '2027-03-31',
  },
  passes: { with: 'session: 2027-03-31', insteadOf: 'session: 2027-06-10' },
  ownEditionOnly: true,
  *check({ project }) {
    const { session, unit } = project;
    if (!session) return;
    const common = { session: session.value, sessionAt: session.at, unit };
    for (const { item, until, instead } of project.supplies)
      if (isSoldOut(until, project))
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
    for (const { stock, until, substitute } of papersSoldOut(project)) {
      const changes = substitute ? changesTo(stock, substitute, project) : [];
      yield {
        at: until.at,
        facts: {
          ...common,
          name: stock.name,
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

/** What is known of both, and other. */
function changesTo(old: Stock, substitute: Stock, project: Project): readonly Change[] {
  const [color, newColor] = [old.color?.value, substitute.color?.value];
  const [weight, newWeight] = [old.weight?.value, substitute.weight?.value];
  const [caliper, newCaliper] = [caliperOf(old).thickness, caliperOf(substitute).thickness];
  return [
    ...(color && newColor && color !== newColor
      ? [{ what: 'color', from: color, to: newColor } as const]
      : []),
    ...(weight && newWeight && JSON.stringify(weight) !== JSON.stringify(newWeight)
      ? [{ what: 'weight', from: weight, to: newWeight } as const]
      : []),
    ...(caliper.equals(newCaliper) ? [] : [{ what: 'caliper', from: caliper, to: newCaliper } as const]),
    ...sheetChanges(old, substitute, project),
  ];
}

/** Of each edition that is printed, which has its own paper. */
function sheetChanges(old: Stock, substitute: Stock, { unit, units }: Project): readonly Change[] {
  const own = editionIn(unit);
  const other = own === 'inch' ? 'metric' : 'inch';
  const sold: readonly { edition: EditionName; from: readonly Sold[]; to: readonly Sold[] }[] = [
    { edition: own, from: old.sheets.map(soldOf), to: substitute.sheets.map(soldOf) },
    { edition: other, from: old.otherSheets.map(soldOf), to: substitute.otherSheets.map(soldOf) },
  ];
  return sold.flatMap(({ edition, from, to }): Change[] => {
    const isPrinted = units === 'both' || units === edition;
    const isAlike = from.map(keyOf).join() === to.map(keyOf).join();
    return !isPrinted || isAlike || to.length === 0 ? [] : [{ what: 'sheet', edition, from, to }];
  });
}

function soldOf({ size: { width, height }, unit }: StockSheet): Sold {
  return { size: { width: width.value, height: height.value }, unit };
}

function keyOf({ size: { width, height } }: Sold): string {
  return `${width} x ${height}`;
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
      return `its ${change.edition === editionIn(unit) ? '' : `${change.edition} `}sheets are ${saySheets(change.to)}, not ${saySheets(change.from)}`;
  }
}

function saySheets(sheets: readonly Sold[]): string {
  return sayList(
    sheets.map(({ size, unit }) => saySize(size, unit)),
    'or',
  );
}

function sayWeight(weight: PaperWeight): string {
  return weight.kind === 'basis' ? `${weight.pounds} lb ${weight.grade}` : `${weight.gsm} gsm`;
}
