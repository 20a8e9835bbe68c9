/** A text as it is read: its lines in one, and fractions with the stroke that people type. */
export function oneLine(text: string): string {
  return text.replaceAll('⁄', '/').replace(/\s+/gu, ' ');
}

/** What stands in a sheet between `:::host` and `:::`, read without our own reader, with the apostrophes that are printed. */
export function hostNotes(sheet: string): string[] {
  return [...sheet.matchAll(/^:::host\n([\s\S]*?)\n:::$/gmu)].map(([, note = '']) =>
    oneLine(note).replace(/(?<=\w)'(?=\w)/gu, '’'),
  );
}

/** Those texts, by their paths, that have any five words of a note in a row, which give it away. */
export function textsThatTell(
  notes: readonly string[],
  texts: ReadonlyMap<string, string>,
): readonly string[] {
  const given = notes.flatMap((note) => inRows(wordsOf(note), 5));
  // A text has five of them only where it has the middle three, which are looked up much faster.
  const middles = given.map((five) => [five.split(' ').slice(1, -1).join(' '), five] as const);
  const known = new Set(middles.map(([three]) => three));
  const isToldIn = (text: string): boolean => {
    const words = wordsOf(text);
    const threes = new Set(inRows(words, 3).filter((three) => known.has(three)));
    return middles.some(([three, five]) => threes.has(three) && words.includes(five));
  };
  return [...texts].flatMap(([path, text]) => (isToldIn(text) ? [path] : []));
}

/** Every so many words in a row of a text of words alone. */
function inRows(text: string, many: number): readonly string[] {
  const words = text.split(' ');
  return words.slice(0, 1 - many).map((_, index) => words.slice(index, index + many).join(' '));
}

/** Words alone, in lower case, one blank between. */
function wordsOf(text: string): string {
  return text
    .toLowerCase()
    .replaceAll('&#39;', '’')
    .replace(/[^\p{L}\p{N}’]+/gu, ' ')
    .trim();
}
