export type CsvField = string | number | bigint | undefined;

/**
 * A table for a spreadsheet: RFC 4180, with a header, every record ended by CR and LF. What a row does not have is empty.
 */
export function tableCsv<Column extends string>(
  columns: readonly Column[],
  rows: readonly Readonly<Partial<Record<Column, CsvField>>>[],
): string {
  const records = [columns, ...rows.map((row) => columns.map((column) => String(row[column] ?? '')))];
  return records.map((fields) => `${fields.map((field) => quoted(asText(field))).join(',')}\r\n`).join('');
}

/**
 * A spreadsheet takes a field for a formula that begins like one, and a name from somebody else's project must not be
 * worked out: an apostrophe before it makes it text (OWASP, "CSV Injection"). A number below nothing stays one.
 */
function asText(field: string): string {
  return /^[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/u.test(field) && !/^-\d+(?:\.\d+)?$/u.test(field)
    ? `'${field}`
    : field;
}

/** RFC 4180, 2.5 to 2.7: a field with a comma, a quote or a line break is quoted, a quote within it doubled. */
function quoted(field: string): string {
  return /[",\r\n]/u.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
}
