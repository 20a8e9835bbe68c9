const ANY_LETTERS = '[\\p{L}\\p{N}]*';
const NO_LETTER_BEFORE = '(?<![\\p{L}\\p{N}])';
const NO_LETTER_AFTER = '(?![\\p{L}\\p{N}])';

/** Asked for with the same words in project after project; a pattern takes longer to build than to use. */
const built = new Map<string, RegExp>();
const MOST_BUILT = 1000;

/**
 * Finds any of some words, written with commas between: `hot glue*, *magnet*`. A word stands alone, but `*` is any
 * letters; a space is a space, a hyphen or nothing. Never finds anything in an empty list.
 */
export function wordFinder(words: string): RegExp {
  const finder = built.get(words) ?? buildFinder(words);
  if (built.size >= MOST_BUILT) built.clear();
  built.set(words, finder);
  return finder;
}

function buildFinder(words: string): RegExp {
  const patterns = membersOf(words).map((word) => word.split('*').map(literal).join(ANY_LETTERS));
  if (patterns.length === 0) return /(?!)/u;
  return new RegExp(`${NO_LETTER_BEFORE}(?:${patterns.join('|')})${NO_LETTER_AFTER}`, 'iu');
}

/** The members of a list with commas between. */
export function membersOf(list: string): readonly string[] {
  return list
    .split(',')
    .map((word) => word.trim())
    .filter(Boolean);
}

function literal(text: string): string {
  return text.replace(/[\\^$.|?+()[\]{}/]/gu, '\\$&').replace(/\s+/gu, '[\\s-]*');
}
