import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const SOURCE = fileURLToPath(new URL('../../src', import.meta.url));

/** Every file of src, the scripts that write others too, by its path below it, and its text. */
export const sources: ReadonlyMap<string, string> = new Map(
  readdirSync(SOURCE, { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.[jt]s$/u.test(path))
    .map((path) => [path, readFileSync(join(SOURCE, path), 'utf8')]),
);

/** An import or re-export, or an `import()`: what is taken of which package or file. Of a whole module, `*`. */
export type Edge = {
  readonly target: string;
  readonly names: readonly string[];
  /** Whether it is loaded when it is asked for, or, as types alone, never. */
  readonly isLater: boolean;
};

const STATEMENT =
  /^(?:import|export)\s+(?<type>type\s+)?(?<names>\{[^}]*\}|\* as \w+|\w+)\s+from\s+'(?<from>[^']+)'/gmu;
const BARE = /^import\s+'(?<from>[^']+)'/gmu;
const LATER = /(?:const\s+(?<names>\{[^}]*\})\s*=\s*await\s+)?\bimport\(\s*'(?<from>[^']+)'\s*\)/gu;

/** What a file imports; a file is named by its path below src, a package by its name. */
export function edgesOf(path: string, text: string): readonly Edge[] {
  const edges = (pattern: RegExp, isLater: boolean): Edge[] =>
    [...text.matchAll(pattern)].map(({ groups }) => {
      const { names = '*', from = '', type }: Partial<Record<string, string>> = groups ?? {};
      const target = from.startsWith('.') ? relative('/', resolve('/', path, '..', from)) : packageOf(from);
      return { target, names: namesIn(names), isLater: isLater || type !== undefined };
    });
  return [...edges(STATEMENT, false), ...edges(BARE, false), ...edges(LATER, true)];
}

function packageOf(specifier: string): string {
  return /^(?:@[^/]+\/)?[^/]+/u.exec(specifier)?.[0] ?? specifier;
}

/** `{ a, type B as C, d: e }` takes a, B and d. */
function namesIn(list: string): readonly string[] {
  if (!list.startsWith('{')) return ['*'];
  const members = list.slice(1, -1).split(',');
  return members.flatMap((member) => /^\s*(?:type\s+)?(\w+)/u.exec(member)?.[1] ?? []);
}

const EXPORT =
  /^export (?:declare )?(?:async )?(?:abstract )?(?:function\*?|const|class|type|interface) (?<name>\w+)/gmu;

/** The names a file exports of its own. */
export function exportsOf(text: string): readonly string[] {
  return [...text.matchAll(EXPORT)].map(({ groups }) => groups?.name ?? '');
}
