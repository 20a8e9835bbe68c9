import { dateInWords } from './days.ts';
import { type Labels, type Say, speaker } from './labels.ts';
import { type HtmlValue, html, SafeHtml, textOf } from './safe-html.ts';

/** Everything a sheet needs to say something in its language. */
export type Voice = {
  /** A BCP 47 tag. */
  readonly language: string;
  readonly say: Say;
  /** A label with markup set in for its values. */
  readonly phrase: (key: string, values: Readonly<Record<string, HtmlValue>>) => SafeHtml;
  /** `key-one`, `key-other` and so on by the language's plural rules, with `{count}` in it. */
  readonly count: (key: string, count: number) => string;
  /** `a, b and c`: joined by what the words ask for, as Spanish says `e` before an i. */
  readonly list: (items: readonly HtmlValue[]) => SafeHtml;
  /** A `YYYY-MM-DD` day in words, its weekday included. */
  readonly day: (date: string) => string;
  /** The same without the weekday. */
  readonly date: (date: string) => string;
  /** `1 hour 15 minutes`. */
  readonly duration: (minutes: number) => string;
};

const voices = new WeakMap<Labels, Voice>();

/** One voice serves all that is said with the same labels. */
export function voiceOf(labels: Labels): Voice {
  const voice = voices.get(labels) ?? newVoice(labels);
  voices.set(labels, voice);
  return voice;
}

function newVoice(labels: Labels): Voice {
  const { language } = labels;
  const say = speaker(labels);
  const count = (key: string, number: number): string => say(say.counted(key, number), { count: number });
  return {
    language,
    say,
    count,
    phrase: (key, values) => SafeHtml.join(say.parts(key, values).map((part) => html`${part}`)),
    list: (items) => list(language, items),
    day: (date) => dateInWords(date, 'full', say),
    date: (date) => dateInWords(date, 'long', say),
    duration: (minutes) => {
      const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
      if (hours === 0) return count('minutes', rest);
      if (rest === 0) return count('hours', hours);
      return say('duration', { hours: count('hours', hours), minutes: count('minutes', rest) });
    },
  };
}

/** Setting one up takes a thousand times as long as using it. */
const lists = new Map<string, Intl.ListFormat>();

function list(language: string, items: readonly HtmlValue[]): SafeHtml {
  const format = lists.get(language) ?? new Intl.ListFormat(language, { type: 'conjunction' });
  lists.set(language, format);
  const parts = format.formatToParts(items.map(textOf));
  const left = [...items];
  return SafeHtml.join(
    parts.map(({ type, value }) => html`${type === 'element' ? (left.shift() ?? '') : value}`),
  );
}
