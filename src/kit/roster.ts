/** Somebody on the roster of a session. */
export type Person = {
  readonly name: string;
  /** How many kits are for them: at least 1. */
  readonly kits: number;
  readonly by: 'post' | 'room';
  /** The handout they take; undefined where they didn't say. */
  readonly unit: 'inch' | 'metric' | undefined;
  /** Line by line. */
  readonly address: readonly string[];
  readonly note: string;
};

/** What is wrong with a line. What stands there is not repeated: it may be somebody's name. */
type RosterFault = { readonly line: number; readonly problem: string };

type RosterReading =
  | { readonly people: readonly Person[] }
  | { readonly faults: readonly [RosterFault, ...RosterFault[]] };

const COLUMNS = ['name', 'how many', 'by', 'unit', 'address', 'note'] as const;

type RosterColumn = (typeof COLUMNS)[number];

/** More kits than anybody takes home are a slip. */
const MOST_KITS = 100;

/**
 * A roster as a table (RFC 4180), its first line the names of its columns: `name`, and any of `how many`, `by` (`post` or
 * `room`), `unit` (`inch` or `metric`), `address` and `note`, in any order.
 */
export function readRoster(text: string): RosterReading {
  const table = readTable(text.replace(/^\uFEFF/u, ''));
  if ('problem' in table) return { faults: [table] };
  const [head, ...records] = table;
  const columns = (head?.fields ?? []).map((field) => field.trim().toLowerCase());
  const unknown = columns.find((each) => !isColumn(each));
  if (!columns.includes('name') || unknown !== undefined || new Set(columns).size < columns.length)
    return {
      faults: [
        {
          line: 1,
          problem: `the first line names the columns, each once, with commas: ${COLUMNS.join(', ')}`,
        },
      ],
    };
  const faults: RosterFault[] = [];
  const people = records.flatMap(({ line, fields }): readonly Person[] => {
    if (fields.every((field) => field.trim() === '')) return [];
    const fault = (problem: string): void => void faults.push({ line, problem });
    if (fields.length !== columns.length) fault(`${fields.length} fields, but ${columns.length} columns`);
    const of = (column: RosterColumn): string => fields[columns.indexOf(column)]?.trim() ?? '';
    return [personOf(of, fault)];
  });
  const [first, ...others] = faults;
  if (first) return { faults: [first, ...others] };
  if (people.length === 0) return { faults: [{ line: 1, problem: 'nobody is on it' }] };
  return { people };
}

function isColumn(text: string): text is RosterColumn {
  return COLUMNS.some((column) => column === text);
}

function personOf(of: (column: RosterColumn) => string, fault: (problem: string) => void): Person {
  const [name, many, by, unit] = [of('name'), of('how many'), of('by'), of('unit').toLowerCase()];
  const address = of('address')
    .split(/\r\n?|\n/u)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  const kits = /^\d{1,3}$/u.test(many) ? Number(many) : many === '' ? 1 : 0;
  const isPosted = /^(?:by )?post$/iu.test(by);
  if (name === '') fault('no name');
  if (kits < 1 || kits > MOST_KITS) fault(`"how many" takes a whole number from 1 to ${MOST_KITS}`);
  if (!isPosted && !/^(?:(?:in the )?room)?$/iu.test(by)) fault('"by" takes post or room');
  if (isPosted && address.length === 0) fault('by post, but without an address');
  if (!['', 'inch', 'metric'].includes(unit)) fault('"unit" takes inch or metric');
  return {
    name,
    kits,
    by: isPosted ? 'post' : 'room',
    unit: unit === 'inch' || unit === 'metric' ? unit : undefined,
    address,
    note: of('note'),
  };
}

type RosterRow = { readonly line: number; readonly fields: readonly string[] };

/** A field: quoted, a quote in it doubled, or plain; then what ends it. */
const FIELD = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|\n|\r|$)/uy;

/** RFC 4180, 2.1 to 2.7; a line may also end as it does on any system. */
function readTable(text: string): readonly RosterRow[] | RosterFault {
  const rows: RosterRow[] = [];
  let fields: string[] = [];
  let [line, next] = [1, 1];
  for (let at = 0; at < text.length || fields.length > 0; ) {
    FIELD.lastIndex = at;
    const found = FIELD.exec(text);
    if (!found)
      return { line: next, problem: 'a quote in the middle of a field, or one that is never closed' };
    const [whole, quoted, plain = '', end] = found;
    fields.push(quoted === undefined ? plain : quoted.replaceAll('""', '"'));
    next += whole.match(/\r\n?|\n/gu)?.length ?? 0;
    at = FIELD.lastIndex;
    if (end === ',') continue;
    rows.push({ line, fields });
    fields = [];
    line = next;
  }
  return rows;
}
