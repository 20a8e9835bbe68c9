import { twinsOf } from '../edition/lengths.ts';
import type { Study } from '../examine/study.ts';
import { Length } from '../measure/length.ts';
import { printDecimal, printInches, printMillimeters } from '../measure/print.ts';
import { rulerMark } from '../measure/round.ts';

const COLUMNS = ['written', 'exact', 'edition', 'deviation', 'length'] as const;

/** One row of the table; `deviation` is the other edition, as printed, less the exact number, in millimeters with its sign. */
type EditionRow = Readonly<Record<(typeof COLUMNS)[number], string>>;

const HEADS = {
  inch: { written: 'inches', exact: 'exact mm', edition: 'edition mm' },
  metric: { written: 'mm', exact: 'exact in', edition: 'edition in' },
} as const;

/** The most names a row lists before it says how many more there are. */
const MOST_NAMES = 3;

const UNITS = { inch: 'inches', metric: 'millimeters' } as const;

/** `proof --editions`: a table per project of what each length is in either edition, as the pages print it. */
export function editionTables(studies: readonly Study[]): string {
  return studies
    .map((study) => {
      const { own, printed } = study.editions;
      const written = `${study.project.slug}: written in ${UNITS[own]}`;
      if (printed !== 'both') return `${written}, printed in ${UNITS[printed]} alone`;
      if (study.editions.inch === study.editions.metric)
        return `${written}, with errors: no other edition yet`;
      const rows = pairsOf(study);
      const deviation = Length.max(Length.zero, ...rows.map((row) => deviationOf(row, own).abs()));
      const title = `${written}, greatest deviation ${printDecimal(deviation, 'mm', 3)} mm`;
      return [
        title,
        ...aligned([
          { ...HEADS[own], deviation: 'deviation', length: 'length' },
          ...rows.map((row) => rowOf(row, own)),
        ]),
      ].join('\n');
    })
    .map((table) => `${table}\n\n`)
    .join('');
}

type Pair = { readonly inch: Length; readonly metric: Length; readonly names: string[] };

/** Every two lengths that are one length in the two editions, with all its names, rising. */
function pairsOf({ editions }: Study): readonly Pair[] {
  const pairs = new Map<string, Pair>();
  for (const { name, inch, metric } of [editions, ...editions.others].flatMap(twinsOf).flat()) {
    const key = `${inch} ${metric}`;
    const pair = pairs.get(key) ?? { inch, metric, names: [] };
    if (!pair.names.includes(name)) pair.names.push(name);
    pairs.set(key, pair);
  }
  return [...pairs.values()].sort((a, b) => a.inch.compare(b.inch) || a.metric.compare(b.metric));
}

function rowOf({ inch, metric, names }: Pair, own: keyof typeof HEADS): EditionRow {
  const more = names.length > MOST_NAMES ? ` and ${names.length - MOST_NAMES} more` : '';
  const deviation = deviationOf({ inch, metric }, own);
  const [inches, millimeters] = [printInches(inch, 'plain'), printMillimeters(metric)];
  return {
    ...(own === 'inch'
      ? { written: inches, exact: printDecimal(inch, 'mm', 3), edition: millimeters }
      : { written: millimeters, exact: printDecimal(metric, 'in', 4), edition: inches }),
    deviation: `${deviation.sign > 0 ? '+' : ''}${printDecimal(deviation, 'mm', 3)}`,
    length: names.slice(0, MOST_NAMES).join(', ') + more,
  };
}

/** How far the number that the other edition prints is from the exact one. */
function deviationOf({ inch, metric }: Pick<Pair, 'inch' | 'metric'>, own: keyof typeof HEADS): Length {
  return own === 'inch' ? rulerMark(metric, 'mm').minus(inch) : rulerMark(inch, 'in').minus(metric);
}

function aligned(rows: readonly EditionRow[]): string[] {
  const widths = COLUMNS.map((column) => Math.max(...rows.map((row) => row[column].length)));
  return rows.map((row) => {
    const cells = COLUMNS.map((column, index) =>
      column === 'length' ? row.length : row[column].padStart(widths[index] ?? 0),
    );
    return `  ${cells.join('  ')}`;
  });
}
