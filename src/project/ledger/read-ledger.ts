import { type Document, isMap, isNode, isScalar, visit } from 'yaml';
import type { z } from 'zod';
import type { Finding } from '../finding.ts';
import { type Place, type SourceFile, textAt } from '../source.ts';
import { parseYaml } from '../yaml/parse-yaml.ts';
import { yamlProblem } from '../yaml/yaml-problem.ts';
import { LEDGER_FILE, type Ledger, NO_REVISIONS } from './ledger.ts';
import { readable } from './ledger-format.ts';

const RESTORE = 'restore it, or delete it to begin again at revision 1';
const EXPECTED = `what "sheetwright publish" wrote there: ${RESTORE}`;

/**
 * Reads a ledger. One that was broken by hand is reported at the value that is broken: publishing over it would lose
 * what it recorded.
 */
export function readLedger(file: SourceFile | undefined, report: (finding: Finding) => void): Ledger {
  if (!file) return NO_REVISIONS;
  const document = parseYaml(file.text);
  const unread = findUnread(document, file);
  if (unread) {
    report(unread);
    return NO_REVISIONS;
  }
  const read = readable.safeDecode(document.toJS(), { error: () => EXPECTED });
  if (read.success) return read.data;
  report(findIssue(culpritOf(read.error.issues, document), document, file));
  return NO_REVISIONS;
}

/** What cannot be read as data; aliases are among it, of which publishing writes none: they may have no end. */
function findUnread(document: Document.Parsed, file: SourceFile): Finding | undefined {
  const [error] = document.errors;
  if (error) {
    const { problem, start } = yamlProblem(error, file.text);
    const facts = { problem, remedy: `put it right; or ${RESTORE}`, isHead: false };
    return { rule: 'broken-yaml', at: firstLine(file, start), facts };
  }
  let alias: Place | undefined;
  visit(document, {
    Alias: (_, { range }) => {
      alias = firstLine(file, range?.[0] ?? 0, range?.[1]);
      return visit.BREAK;
    },
  });
  return alias && findUnexpected(LEDGER_FILE, alias, EXPECTED);
}

function findIssue({ path, message, misfit }: Culprit, document: Document, file: SourceFile): Finding {
  const at = misfit === 'ledger key' ? keyPlace(path, document, file) : placeOf(path, document, file);
  if (misfit) return { rule: 'unexpected-value', at, facts: { misfit, actual: textAt(at) } };
  const key = path.findLast((each) => typeof each === 'string') ?? LEDGER_FILE;
  return findUnexpected(key, at, message, isThere(path, document));
}

function findUnexpected(key: string, at: Place, expected: string, isThere = true): Finding {
  const actual = isThere ? textAt(at) : '';
  return { rule: 'unexpected-value', at, facts: { key, expected, actual } };
}

/** What is wrong where, in words unless it should not be there at all. */
type Culprit = Pick<z.core.$ZodIssue, 'path' | 'message'> & {
  readonly misfit?: 'ledger key' | 'edge of what has none';
};

/**
 * What is wrong first: of what may be one of several, what is wrong with the one it is nearest to, which is one whose
 * kind it has, and whose wrong value is there.
 */
function culpritOf(issues: readonly z.core.$ZodIssue[], document: Document): Culprit {
  const issue = issues.find(({ code }) => code === 'unrecognized_keys') ?? issues[0];
  if (!issue) return { path: [], message: EXPECTED };
  if (issue.code === 'unrecognized_keys') {
    return { ...issue, path: [...issue.path, ...issue.keys.slice(0, 1)], misfit: 'ledger key' };
  }
  if (issue.code === 'invalid_type' && issue.expected === 'never') {
    return { ...issue, misfit: 'edge of what has none' };
  }
  if (issue.code !== 'invalid_union') return issue;
  const [nearest = []] = issue.errors
    .map((issues) => issues.filter(({ code, path }) => path.length > 0 || code !== 'invalid_type'))
    .filter((issues) => issues.length > 0)
    .toSorted((a, b) => strangersIn(a) - strangersIn(b));
  const within = nearest.map((each) =>
    culpritOf([{ ...each, path: [...issue.path, ...each.path] }], document),
  );
  return within.find(({ path }) => isThere(path, document)) ?? within[0] ?? issue;
}

/** How many keys of what is there one of several kinds doesn't know. */
function strangersIn(issues: readonly z.core.$ZodIssue[]): number {
  return issues.flatMap((issue) => (issue.code === 'unrecognized_keys' ? issue.keys : [])).length;
}

function isThere(path: readonly PropertyKey[], document: Document): boolean {
  return document.getIn(path, true) !== undefined;
}

/** Where the value at a path stands, as far as its first line goes; or the nearest one around it that is there. */
function placeOf(path: readonly PropertyKey[], document: Document, file: SourceFile): Place {
  for (let depth = path.length; depth > 0; depth -= 1) {
    const node = document.getIn(path.slice(0, depth), true);
    const [start = 0, end = 0] = (isNode(node) && node.range) || [];
    if (start < end) return firstLine(file, start, end);
  }
  return firstLine(file, 0);
}

function keyPlace(path: readonly PropertyKey[], document: Document, file: SourceFile): Place {
  const map = document.getIn(path.slice(0, -1), true);
  const keys = isMap(map) ? map.items.map(({ key }) => key) : [];
  const key = keys.find((each) => isScalar(each) && String(each.value) === path.at(-1));
  return isNode(key) ? firstLine(file, key.range?.[0] ?? 0, key.range?.[1]) : placeOf(path, document, file);
}

function firstLine(file: SourceFile, start: number, end: number = file.text.length): Place {
  const line = /.*/u.exec(file.text.slice(start, end))?.[0] ?? '';
  return { file, start, end: start + line.trimEnd().length };
}
