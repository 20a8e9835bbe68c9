import { parseDocument } from 'yaml';

/** A character that makes the rest of a text unreadable, found by mending it, and what would put it right. */
type Culprit = {
  readonly problem: string;
  readonly remedy: string;
  readonly start: number;
  readonly end: number;
};

/** What can be tried is a guess each; a text with more of them is left to the parser's own words. */
const MOST_TRIES = 40;

const PARSING = { schema: 'failsafe', uniqueKeys: false, logLevel: 'silent' } as const;

/**
 * The usual slips whose error shows far behind them: a quotation mark that is not closed on its line or closed too
 * early, a color without quotes whose `#` hides what closes the line. It was the slip if the text can be read once it
 * is mended.
 */
export function culpritOf(text: string): Culprit | undefined {
  return unquotedColor(text) ?? strayQuote(text);
}

/** All of a sheet's colors are usually written alike: the first is named, all are mended. */
function unquotedColor(text: string): Culprit | undefined {
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
function strayQuote(text: string): Culprit | undefined {
  const openings = [...text.matchAll(/(?<=^[ \t]*|[:,[{-][ \t]*)["']/gmu)].slice(0, MOST_TRIES);
  for (const { 0: mark, index } of openings) {
    const line = text.slice(index).split(/[\r\n]/u, 1)[0] ?? '';
    const isOdd = line.split(mark).length % 2 === 0;
    if (!isOdd || !isReadable(text.slice(0, index) + text.slice(index + 1))) continue;
    return { ...wordsOn(line, mark), start: index, end: index + 1 };
  }
  return undefined;
}

function wordsOn(line: string, mark: string): Pick<Culprit, 'problem' | 'remedy'> {
  const isOpen = line.lastIndexOf(mark) === 0;
  if (isOpen) {
    const problem = 'a quotation mark is opened and never closed';
    return { problem, remedy: 'put a second one behind the last word it belongs to, or take it away' };
  }
  const other = mark === "'" ? 'double' : 'single';
  const problem = 'a quotation mark is closed before the words in it end';
  return { problem, remedy: `put the whole value in ${other} quotes, or take the first mark away` };
}

function isReadable(text: string): boolean {
  return parseDocument(text, PARSING).errors.length === 0;
}
