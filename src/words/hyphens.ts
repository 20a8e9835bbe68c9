import { createRequire } from 'node:module';

/** A word of so many letters may be wider than a narrow column, or than large print's page. */
const LONG_WORD = /[\p{L}\p{M}]{16,}/gu;

type Hyphenate = (word: string) => string;

const require = createRequire(import.meta.url);
const hyphenators = new Map<string, Hyphenate>();

/**
 * Long words with soft hyphens where the language divides them: browsers that print have no dictionaries. Others are
 * left alone, so that what is copied or searched is what was typed.
 */
export function hyphenated(text: string, language: string): string {
  return text.replace(LONG_WORD, (word) => hyphenatorFor(language)(word));
}

/** Text without soft hyphens: for programs to read, and to be passed on. */
export function dropSoftHyphens(text: string): string {
  return text.replaceAll('\u00ad', '');
}

function hyphenatorFor(language: string): Hyphenate {
  const hyphenate = hyphenators.get(language) ?? findHyphenator(language.toLowerCase());
  hyphenators.set(language, hyphenate);
  return hyphenate;
}

/** Patterns are large, and loaded for the first long word of a language. */
function findHyphenator(language: string): Hyphenate {
  try {
    const { hyphenateSync } = require(`hyphen/${language}`) as { readonly hyphenateSync: Hyphenate };
    return (word) => hyphenateSync(word);
  } catch {
    const wider = language.split('-').slice(0, -1).join('-');
    return wider === '' ? (word) => word : findHyphenator(wider);
  }
}
