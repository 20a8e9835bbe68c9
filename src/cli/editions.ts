import type { Study } from '../edition/study.ts';
import { type EditionRow, editionRows } from '../edition/table.ts';
import { printDecimal } from '../measure/print.ts';

const HEAD: EditionRow = {
  length: 'length',
  inches: 'inches',
  exact: 'exact mm',
  edition: 'edition mm',
  deviation: 'deviation',
};
const COLUMNS: readonly (keyof EditionRow)[] = ['inches', 'exact', 'edition', 'deviation', 'length'];

/** `proof --editions`: a table per project of what each length becomes in the other edition. */
export function editionTables(studies: readonly Study[]): string {
  return studies
    .map(({ project, worked }) => {
      const title = `${project.slug}: written in ${worked.editions.own === 'inch' ? 'inches' : 'millimeters'}, greatest deviation ${printDecimal(worked.deviation, 'mm', 3)} mm`;
      return [title, ...aligned([HEAD, ...editionRows(worked)])].join('\n');
    })
    .map((table) => `${table}\n\n`)
    .join('');
}

function aligned(rows: readonly EditionRow[]): string[] {
  const widths = COLUMNS.map((column) => Math.max(...rows.map((row) => row[column].length)));
  return rows.map((row) =>
    COLUMNS.map((column, index) =>
      column === 'length' ? row.length : row[column].padStart(widths[index] ?? 0),
    )
      .join('  ')
      .replace(/^/u, '  '),
  );
}
