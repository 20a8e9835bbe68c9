import { lookup } from 'bcp-47-match';
import type { Labels } from './labels.ts';

/** The language of a label that another has not. */
export const ENGLISH = 'en';

/** What a sheet in one language is said with. */
type Language = {
  /** The language of the file that has most of the words: the last of the chain, whose holes English fills. */
  readonly from: string;
  /** Whole: what the language has no words for yet is there in English. */
  readonly labels: Labels;
  /** Keys of the words that stand in English, in the order of the English file. */
  readonly missing: readonly string[];
  /** False where there are no labels in it at all. */
  readonly known: boolean;
};

/**
 * The words for a BCP 47 tag from all there are, by file name: those of each beginning of the tag that has a file, as
 * RFC 4647 section 3.4 looks one up, the longest first. `fr-CA` is said with its own words, then with French ones, and
 * dated as in Canada. An unknown language is English.
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
  const chain = chainOf(all, wanted);
  const last = chain.at(-1);
  if (!last) {
    const labels = { language: ENGLISH, texts: english.texts, asked: wanted };
    return { from: ENGLISH, labels, missing: [], known: false };
  }
  const own = layered(chain.toReversed());
  const missing = keysOf(english, last.language).filter((key) => !own.has(key));
  const texts = layered([english, ...chain.toReversed()]);
  return { from: last.language, labels: { language: wanted, texts }, missing, known: true };
}

function chainOf(all: ReadonlyMap<string, Labels>, wanted: string): readonly Labels[] {
  // The library takes the first tag that is any beginning of the wanted one, however short.
  const longestFirst = [...all.keys()].sort((one, other) => other.length - one.length);
  const found = all.get(lookup(longestFirst, wanted) ?? '');
  if (!found) return [];
  const wider = found.language.split('-').slice(0, -1).join('-');
  return wider === '' ? [found] : [found, ...chainOf(all, wider)];
}

/** Files of labels laid over one another. A counted label replaces all plurals of the one below it. */
function layered(files: readonly Labels[]): ReadonlyMap<string, string> {
  const texts = new Map<string, string>();
  for (const file of files) {
    for (const key of file.texts.keys()) {
      const counted = /^(.+)-other$/u.exec(key)?.[1];
      if (counted !== undefined) for (const category of CATEGORIES) texts.delete(`${counted}-${category}`);
    }
    for (const [key, text] of file.texts) texts.set(key, text);
  }
  return texts;
}

const CATEGORIES: readonly Intl.LDMLPluralRule[] = ['zero', 'one', 'two', 'few', 'many', 'other'];

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
