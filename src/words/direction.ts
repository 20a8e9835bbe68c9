/** Scripts that are written from right to left (Unicode 16, Bidi_Class R and AL), of languages that are written today. */
const FROM_RIGHT = new Set(['Adlm', 'Arab', 'Hebr', 'Mand', 'Nkoo', 'Rohg', 'Samr', 'Syrc', 'Thaa', 'Yezi']);

/** Whether a language, by its BCP 47 tag, is written from right to left in its usual script or the one it names. */
export function isFromRight(language: string): boolean {
  return FROM_RIGHT.has(new Intl.Locale(language).maximize().script ?? '');
}
