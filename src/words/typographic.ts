/** Words as they begin a sentence. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Contractions and possessives that may begin a run of text, after a word in italics: `*box*'s`. */
const AFTER_WORD = /^'(?=(?:s|t|d|m|re|ll|ve)\b)/iu;

/**
 * Typed quotation marks and apostrophes as a printer sets them. Only English has one way of setting them that
 * everybody expects; in other languages the apostrophe alone is set.
 */
export function typographic(text: string, language: string): string {
  const apostrophes = text.replace(AFTER_WORD, '’').replace(/(?<=[\p{L}\p{N}])'(?=\p{L})/gu, '’');
  if (!/^en\b/iu.test(language)) return apostrophes;
  return apostrophes
    .replace(/(?<=^|[\s([–—])"(?=\S)/gu, '“')
    .replace(/"/gu, '”')
    .replace(/(?<=^|[\s([–—“])'(?=\S)/gu, '‘')
    .replace(/'/gu, '’');
}
