import { lookup } from 'bcp-47-match';
import type { Labels } from './labels.ts';

/** The language of a label that another has not. */
export const ENGLISH = 'en';

/** What a sheet in one language is said with. */
type Language = {
  /** The language of the file the words are from. */
  readonly from: string;
  /** Whole: what the language has no words for yet is there in English. */
  readonly labels: Labels;
  /** Keys of the words that stand in English, in the order of the English file. */
  readonly missing: readonly string[];
  /** False where there are no labels in it at all. */
  readonly known: boolean;
};

/**
 * The words for a BCP 47 tag from all there are, by file name: the longest beginning of the tag that has a file, as RFC
 * 4647 section 3.4 looks one up. `de-AT` is said with German words, and dated as in Austria. An unknown language is
 * English.
 */
export function labelsFor(all: ReadonlyMap<string, Labels>, wanted: string): Language {
  const known = languages.get(all) ?? new Map<string, Language>();
  languages.set(all, known);
  const language = known.get(wanted) ?? lookUp(all, wanted);
  known.set(wanted, language);
  return language;
}

/** Those that were asked for, of all there are. */
const languages = new WeakMap<ReadonlyMap<string, Labels>, Map<string, Language>>();

function lookUp(all: ReadonlyMap<string, Labels>, wanted: string): Language {
  const english = all.get(ENGLISH);
  if (!english) throw new Error('the English labels are missing from the package');
  const found = all.get(lookup([...all.keys()], wanted) ?? '');
  if (!found) return { from: ENGLISH, labels: english, missing: [], known: false };
  const missing = keysOf(english, found.language).filter((key) => !found.texts.has(key));
  const texts = new Map([...english.texts, ...found.texts]);
  return { from: found.language, labels: { language: wanted, texts }, missing, known: true };
}

/**
 * The keys a language needs: those of the English, a counted label in every plural category of its own. English counts
 * `-one` and `-other`; French has `-many` besides.
 */
export function keysOf({ texts }: Labels, language: string): readonly string[] {
  const { pluralCategories } = new Intl.PluralRules(language).resolvedOptions();
  return [...texts.keys()].flatMap((key) => {
    const counted = /^(.+)-(one|other)$/u.exec(key)?.[1];
    if (counted === undefined || !texts.has(`${counted}-one`) || !texts.has(`${counted}-other`)) return [key];
    return key.endsWith('-one') ? [] : pluralCategories.map((category) => `${counted}-${category}`);
  });
}
