import type { Length } from '../measure/length.ts';
import { printDecimal, printInches, printMillimetres } from '../measure/print.ts';
import type { WorkedOut } from './edition.ts';

/** One row of the table of editions, as text. `deviation` is edition less exact, in millimetres with its sign. */
export type EditionRow = {
  readonly length: string;
  readonly inches: string;
  readonly exact: string;
  readonly edition: string;
  readonly deviation: string;
};

/** The most names a row lists before it says how many more there are. */
const MOST_NAMES = 3;

/** Every number of both editions side by side; numbers that were and stay the same are one row. */
export function editionRows({ editions, table }: WorkedOut): readonly EditionRow[] {
  const rows = new Map<string, { names: string[]; own: Length; edition: Length }>();
  for (const { names, own, edition } of table) {
    const key = `${own} ${edition}`;
    const row = rows.get(key) ?? { names: [], own, edition };
    row.names.push(...names.filter((name) => !row.names.includes(name)));
    rows.set(key, row);
  }
  return [...rows.values()]
    .sort((a, b) => a.own.compare(b.own))
    .map(({ names, own, edition }) => {
      const inch = editions.own === 'inch' ? own : edition;
      return {
        length: named(names),
        inches: printInches(inch, 'plain'),
        exact: printDecimal(inch, 'mm', 3),
        edition: editions.own === 'inch' ? printMillimetres(edition) : printMillimetres(own),
        deviation: signed(editions.own === 'inch' ? edition.minus(own) : own.minus(edition)),
      };
    });
}

function named(names: readonly string[]): string {
  const shown = names.slice(0, MOST_NAMES).join(', ');
  return names.length > MOST_NAMES ? `${shown} and ${names.length - MOST_NAMES} more` : shown;
}

function signed(length: Length): string {
  const text = printDecimal(length, 'mm', 3);
  return length.sign > 0 ? `+${text}` : text;
}
