import type { YAMLParseError } from 'yaml';
import { parseYaml } from './parse-yaml.ts';

/** What is wrong with a text that is no YAML, and where, in offsets of that text. */
type YamlProblem = {
  readonly problem: string;
  readonly remedy?: string;
  readonly start: number;
  readonly end: number;
};

/** What can be tried is a guess each; a text with more of them is left to the parser's own words. */
const MOST_TRIES = 40;

/** Every scalar is the text that was typed, and repeated keys are ours to report. */
export const AS_TYPED = { schema: 'failsafe', uniqueKeys: false } as const;

/** Puts a parser's error into words, and its place where a person would look. */
export function yamlProblem(error: YAMLParseError, text: string): YamlProblem {
  const culprit = culpritOf(text);
  if (culprit) return culprit;
  const problem = plainProblem(error);
  const [at] = error.pos;
  if (error.code === 'MULTIPLE_DOCS') return { problem, ...secondDocument(text, at) };
  const quote = /Missing closing (["'])/u.exec(error.message)?.[1];
  const opened = quote === undefined ? -1 : text.lastIndexOf(quote, at - 1);
  // An error at the very end points at the last thing written.
  const start = opened >= 0 ? opened : Math.min(at, Math.max(text.trimEnd().length - 1, 0));
  return { problem, start, end: start + 1 };
}

/** The line that begins a second document. */
function secondDocument(text: string, start: number): Pick<YamlProblem, 'remedy' | 'start' | 'end'> {
  const [line = ''] = text.slice(start).split(/[\r\n]/u, 1);
  const remedy = 'delete the --- line; if it ends the settings block, leave nothing after the ---';
  return { remedy, start, end: start + line.trimEnd().length };
}

/** In the words of someone who never heard of a parser. */
function plainProblem({ code, message }: YAMLParseError): string {
  if (code === 'MISSING_CHAR' && message.includes('quote'))
    return 'a quotation mark is opened and never closed';
  if (code === 'BLOCK_AS_IMPLICIT_KEY' && message.includes('compact')) {
    return 'there is a second colon; put the text after the first one in quotes, or indent the lines below it evenly';
  }
  return (
    PROBLEMS[code] ?? 'this cannot be read; look for a missing colon, quotation mark or bracket just before'
  );
}

const NO_COLON =
  'this line has no key with a colon and a space after it, or a quotation mark is never closed';

const PROBLEMS: Readonly<Partial<Record<string, string>>> = {
  TAB_AS_INDENT: 'there is a tab at the beginning of this line; indent with spaces',
  BAD_INDENT: 'this line is not indented like the lines it belongs to, or a bracket above it is never closed',
  BAD_SCALAR_START: 'a value cannot begin with this character; put the value in quotes',
  BAD_DQ_ESCAPE: 'a backslash in double quotes needs a second one; or use single quotes',
  BLOCK_IN_FLOW: 'a block of lines cannot go inside brackets',
  BLOCK_AS_IMPLICIT_KEY: 'the line before this one needs a key and a colon of its own',
  MULTILINE_IMPLICIT_KEY: NO_COLON,
  KEY_OVER_1024_CHARS: NO_COLON,
  RESOURCE_EXHAUSTION: 'there are brackets within brackets, or indents within indents, without end',
  MISSING_CHAR: 'a comma, a colon or a closing bracket is missing here',
  UNEXPECTED_TOKEN:
    'this does not belong here; look for a missing quotation mark, comma or bracket just before',
  MULTIPLE_DOCS: 'a second part begins here, and nothing from here on is read',
  BAD_ALIAS: 'a * refers to a value marked with & above; there is none by this name',
  BAD_DIRECTIVE: 'a line that begins with % is not part of a sheet',
  TAG_RESOLVE_FAILED: 'a value cannot begin with ! here; put it in quotes',
};

/**
 * The usual slips whose error shows far behind them: a quotation mark that is not closed on its line or closed too
 * early, a color without quotes whose `#` hides what closes the line. It was the slip if the text can be read once it
 * is mended.
 */
function culpritOf(text: string): YamlProblem | undefined {
  return unquotedColor(text) ?? strayQuote(text);
}

/** All of a sheet's colors are usually written alike: the first is named, all are mended. */
function unquotedColor(text: string): YamlProblem | undefined {
  const bare = /(?<=:[ \t]+)#[\da-f]{3,8}\b/giu;
  const first = bare.exec(text);
  if (!first || !isReadable(text.replace(bare, '"$&"'))) return undefined;
  return {
    problem: 'a # without quotes begins a comment, and the rest of its line is not read',
    remedy: `put the color in quotes: "${first[0]}"`,
    start: first.index,
    end: first.index + first[0].length,
  };
}

/** The first quotation mark at the beginning of a value without which the text can be read. */
function strayQuote(text: string): YamlProblem | undefined {
  const openings = [...text.matchAll(/(?<=^[ \t]*|[:,[{-][ \t]*)["']/gmu)].slice(0, MOST_TRIES);
  for (const { 0: mark, index } of openings) {
    const line = text.slice(index).split(/[\r\n]/u, 1)[0] ?? '';
    const isOdd = line.split(mark).length % 2 === 0;
    if (!isOdd || !isReadable(text.slice(0, index) + text.slice(index + 1))) continue;
    return { ...wordsOn(line, mark), start: index, end: index + 1 };
  }
  return undefined;
}

function wordsOn(line: string, mark: string): Pick<YamlProblem, 'problem' | 'remedy'> {
  const isOpen = line.lastIndexOf(mark) === 0;
  if (isOpen) {
    const problem = 'a quotation mark is opened and never closed';
    return { problem, remedy: 'put a second one after the last word it belongs to, or delete it' };
  }
  const other = mark === "'" ? 'double' : 'single';
  const problem = 'a quotation mark is closed before the words in it end';
  return { problem, remedy: `put the whole value in ${other} quotes, or delete the first mark` };
}

function isReadable(text: string): boolean {
  return parseYaml(text, AS_TYPED).errors.length === 0;
}
