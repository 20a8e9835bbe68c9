import type { MetricUnit } from '../measure/ruler-unit.ts';

/** The words of a sheet in one language: key to text, `{name}` standing for a value. */
export type Labels = {
  /** A BCP 47 tag, for dates, numbers and plurals; its first part names the file the words are from. */
  readonly language: string;
  readonly texts: ReadonlyMap<string, string>;
  /** The language that was asked for, where we have no words in it. */
  readonly asked?: string;
  /** What a project calls its pieces on paper, by their ids; of the others the id is the name. */
  readonly pieces?: ReadonlyMap<string, string>;
  /** What metric lengths are said in; millimeters if nothing else is said. */
  readonly metric?: MetricUnit;
};

/** Puts a label's values into it. */
export type Speak = (key: string, values?: Readonly<Record<string, string | number>>) => string;

/**
 * Says a label: `say('cut-list')`, `say('page-of', { page: 2, pages: 4 })`. A value given as a number is written as the
 * language writes it. An unknown key is our own bug and throws.
 */
export type Say = Speak & {
  readonly language: string;
  /** What metric lengths are said in. */
  readonly metric: MetricUnit;
  /** The names of pieces by their ids, where those are not their names. */
  readonly pieces: ReadonlyMap<string, string>;
  /** A label cut up: its own words and, at every other place, a value; the name of one that is not given, in braces. */
  readonly parts: <Value>(
    key: string,
    values: Readonly<Record<string, Value | number>>,
  ) => readonly (Value | string)[];
  readonly has: (key: string) => boolean;
  /** One of our figures with the language's decimal mark: `3.5` is `3,5`. Exact: no digit is lost or gained. */
  readonly figure: (figure: string) => string;
  /** The label for so many of something, of `key-one`, `key-few`, `key-other` and so on. */
  readonly counted: (key: string, count: number) => string;
  /** The same for a plural category. */
  readonly inPlural: (key: string, category: Intl.LDMLPluralRule) => string;
  /** The plural category of a number. */
  readonly plural: (count: number) => Intl.LDMLPluralRule;
  /** The plural category of a part of one thing: `½ inch`, as one is said; `½ cala`, as fractions are in Polish. */
  readonly pluralOfPart: Intl.LDMLPluralRule;
};

const speakers = new WeakMap<Labels, Say>();

type Texts = Labels['texts'];

/** The words of labels and, at every other place, the names of their values; each label is cut up once. */
const cut = new WeakMap<Texts, Map<string, readonly string[]>>();

function cutUp(texts: Texts, key: string): readonly string[] | undefined {
  const known = cut.get(texts) ?? new Map<string, readonly string[]>();
  cut.set(texts, known);
  const parts = known.get(key) ?? texts.get(key)?.split(/\{(\w+)\}/u);
  if (parts) known.set(key, parts);
  return parts;
}

/** One speaker serves all that is said with the same labels. */
export function speaker(labels: Labels): Say {
  const say = speakers.get(labels) ?? newSpeaker(labels);
  speakers.set(labels, say);
  return say;
}

function newSpeaker({ language, texts, pieces = new Map(), metric = 'mm' }: Labels): Say {
  const numbers = new Intl.NumberFormat(language);
  const plurals = new Intl.PluralRules(language);
  const hasFew = plurals.resolvedOptions().pluralCategories.includes('few');
  const mark = numbers.formatToParts(1.5).find(({ type }) => type === 'decimal')?.value ?? '.';
  const parts: Say['parts'] = (key, values) => {
    const own = cutUp(texts, key);
    if (!own) throw new Error(`no label "${key}" in ${language}`);
    return own.map((part, index) => {
      const value = index % 2 === 0 ? part : (values[part] ?? `{${part}}`);
      return typeof value === 'number' ? numbers.format(value) : value;
    });
  };
  const say: Speak = (key, values = {}) => parts(key, values).join('');
  const inPlural: Say['inPlural'] = (key, category) =>
    texts.has(`${key}-${category}`) ? `${key}-${category}` : `${key}-other`;
  return Object.assign(say, {
    language,
    metric,
    pieces,
    parts,
    has: (key: string) => texts.has(key),
    figure: (figure: string) => figure.replace('.', mark),
    inPlural,
    counted: (key: string, count: number) => inPlural(key, plurals.select(count)),
    plural: (count: number) => plurals.select(count),
    pluralOfPart: hasFew ? plurals.select(0.5) : 'one',
  });
}
