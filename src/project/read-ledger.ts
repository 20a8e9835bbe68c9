import { type Document, isNode, parseDocument, visit } from 'yaml';
import type { z } from 'zod';
import type { Finding } from './finding.ts';
import { LEDGER_FILE, type Ledger, NO_REVISIONS } from './ledger.ts';
import { readable } from './ledger-format.ts';
import type { Place, SourceFile } from './source.ts';
import { yamlProblem } from './yaml-problem.ts';

const EXPECTED =
  'what "sheetwright publish" wrote there: restore it, or delete it to begin again at revision 1';

/**
 * Reads a ledger. One that was broken by hand is reported at the value that is broken: publishing over it would lose
 * what it recorded.
 */
export function readLedger(file: SourceFile | undefined, report: (finding: Finding) => void): Ledger {
  if (!file) return NO_REVISIONS;
  const document = parseDocument(file.text, { logLevel: 'silent' });
  const unread = unreadPlace(document, file);
  if (unread) {
    report(findUnexpected(LEDGER_FILE, unread, EXPECTED));
    return NO_REVISIONS;
  }
  const read = readable.safeDecode(document.toJS(), { error: () => EXPECTED });
  if (read.success) return read.data;
  const { path, message } = culpritOf(read.error.issues, document);
  const key = path.findLast((each) => typeof each === 'string') ?? LEDGER_FILE;
  report(findUnexpected(key, placeOf(path, document, file), message, isThere(path, document)));
  return NO_REVISIONS;
}

/** What cannot be read as data; aliases are among it, of which publishing writes none: they may have no end. */
function unreadPlace(document: Document.Parsed, file: SourceFile): Place | undefined {
  const [error] = document.errors;
  if (error) return firstLine(file, yamlProblem(error, file.text).start);
  let found: Place | undefined;
  visit(document, {
    Alias: (_, { range }) => {
      found = firstLine(file, range?.[0] ?? 0, range?.[1]);
      return visit.BREAK;
    },
  });
  return found;
}

function findUnexpected(key: string, at: Place, expected: string, isThere = true): Finding {
  const actual = isThere ? at.file.text.slice(at.start, at.end) : '';
  return { rule: 'unexpected-value', at, facts: { key, expected, actual } };
}

type Issue = Pick<z.core.$ZodIssue, 'path' | 'message'>;

/**
 * What is wrong first: of what may be one of several, what is wrong with the one it is nearest to, which is one whose
 * kind it has, and whose wrong value is there.
 */
function culpritOf([issue]: readonly z.core.$ZodIssue[], document: Document): Issue {
  if (!issue) return { path: [], message: EXPECTED };
  if (issue.code !== 'invalid_union') return issue;
  const within = issue.errors.flatMap((issues) =>
    issues
      .filter(({ code, path }) => path.length > 0 || code !== 'invalid_type')
      .map((each) => culpritOf([{ ...each, path: [...issue.path, ...each.path] }], document)),
  );
  return within.find(({ path }) => isThere(path, document)) ?? within[0] ?? issue;
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

function firstLine(file: SourceFile, start: number, end: number = file.text.length): Place {
  const line = /.*/u.exec(file.text.slice(start, end))?.[0] ?? '';
  return { file, start, end: start + line.trimEnd().length };
}
