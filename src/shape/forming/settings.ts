import type { Length, Unit } from '../../measure/length.ts';
import {
  type LengthProblem,
  parseLength,
  parseSizes,
  type Reading,
  writtenUnit,
} from '../../measure/notation.ts';
import type { FormSetting } from '../../project/model.ts';
import type { At, Place } from '../../project/source.ts';
import type { Form, FormParameter, FormRequest } from '../form.ts';
import type { ShapeProblem } from '../shapes.ts';
import { type Ruler, roundDown, roundUp, rulerOf, say } from './ruler.ts';

/** What the settings of a form are about, for messages. */
type Subject = Pick<Form, 'name' | 'parameters' | 'example'>;

/** How many lengths each kind of parameter is written with; the others are no lengths. */
const LENGTHS: Partial<Record<FormParameter['kind'], 1 | 2 | 3>> = { length: 1, size: 2, volume: 3 };

const MOST_COUNTED = 99;

/** The rule that reports what a form cannot be. */
const LIMIT = 'form-limit';

/**
 * The measurements of one form as written, read. Whatever cannot be read, and whatever the form refuses, is
 * collected in `problems`, each at the very characters.
 */
export class Settings {
  readonly ruler: Ruler;
  readonly caliper: Length;
  /** The radius of the piece's rounded corners. */
  readonly corners: At<Length> | undefined;
  /** The piece's id, which messages begin with. */
  readonly piece: string;
  readonly problems: ShapeProblem[] = [];
  /** Where the form is named: the place of whatever was not written. */
  readonly at: Place;
  readonly #subject: Subject;
  readonly #written: ReadonlyMap<string, FormSetting>;
  readonly #lengths = new Map<string, readonly At<Length>[]>();
  readonly #counts = new Map<string, At<number>>();
  readonly #choices = new Map<string, At<string>>();

  constructor(subject: Subject, { piece, settings, unit, metric, caliper }: FormRequest) {
    this.#subject = subject;
    this.#written = settings;
    this.piece = piece.id.value;
    this.at = piece.body.kind === 'form' ? piece.body.form.at : piece.id.at;
    this.caliper = caliper;
    this.corners = piece.corners;
    const written = subject.parameters.flatMap(({ key }) => settings.get(key) ?? []);
    this.ruler = rulerOf(rulingUnit(subject, written) ?? unit, metric);
    for (const setting of written) this.#read(setting, unit);
  }

  has(key: string): boolean {
    return this.#lengths.has(key) || this.#counts.has(key) || this.#choices.has(key);
  }

  /** One length; what the form takes where none is written. */
  length(key: string, usual: Length): At<Length> {
    return this.#lengths.get(key)?.[0] ?? { value: usual, at: this.at };
  }

  /** Two or three lengths, in the order written; empty where none are. */
  lengths(key: string): readonly At<Length>[] {
    return this.#lengths.get(key) ?? [];
  }

  count(key: string, usual: number): At<number> {
    return this.#counts.get(key) ?? { value: usual, at: this.at };
  }

  /** One of the parameter's choices; the first where none is written. */
  choice(key: string): string {
    return this.#choices.get(key)?.value ?? this.#parameter(key)?.choices?.[0] ?? '';
  }

  /** Says that exactly one of several measurements is needed where none or more are given, readable or not. */
  needOneOf(keys: readonly string[]): void {
    const given = keys.filter((key) => this.#written.has(key));
    const [first = '', second] = given;
    if (given.length === 0) {
      const message = `${this.piece} has no size: ${a(this.#subject.name)} needs ${keys.join(' or ')}`;
      this.problems.push({
        rule: 'missing-value',
        message,
        remedy: `add "${this.#sample(keys)}"`,
        at: this.at,
      });
    } else if (second !== undefined) {
      const at = this.#written.get(second)?.text.at ?? this.at;
      this.refuse(at, `${this.piece} has both ${first} and ${second}`, `take one of the two out`);
    }
  }

  /** Says what cannot be, with its numbers, and what would put it right. */
  refuse(at: Place, message: string, remedy: string): void {
    this.problems.push({ rule: LIMIT, message, remedy, at });
  }

  /** Refuses a length under the least; `what` it is follows the piece's name: `the depth`. */
  refuseUnder({ value, at }: At<Length>, least: Length, what: string, why: string): void {
    if (!value.lessThan(least)) return;
    const message = `${what} of ${this.piece} is ${this.say(value)}, less than ${this.say(least)}: ${why}`;
    this.refuse(at, message, `make it at least ${this.say(roundUp(least, this.ruler.step))}`);
  }

  /** Refuses a length over the most. */
  refuseOver({ value, at }: At<Length>, most: Length, what: string, why: string): void {
    if (!value.greaterThan(most)) return;
    const message = `${what} of ${this.piece} is ${this.say(value)}, more than ${this.say(most)}: ${why}`;
    const marked = roundDown(most, this.ruler.step);
    this.refuse(at, message, `make it at most ${this.say(marked.sign > 0 ? marked : most)}`);
  }

  say(length: Length): string {
    return say(this.ruler, length);
  }

  /** How one of several measurements is written in the form's example. */
  #sample(keys: readonly string[]): string {
    const lines = this.#subject.example.settings;
    return lines.find((line) => keys.some((key) => line.startsWith(`${key}:`))) ?? `${keys[0]}: …`;
  }

  #parameter(key: string): FormParameter | undefined {
    return this.#subject.parameters.find((parameter) => parameter.key === key);
  }

  #read(setting: FormSetting, projectUnit: Unit): void {
    const parameter = this.#parameter(setting.key.value);
    if (!parameter) return;
    const { key, kind } = parameter;
    const count = LENGTHS[kind];
    if (count !== undefined) this.#readLengths(key, count, setting, setting.unit ?? projectUnit);
    else if (kind === 'count') this.#readCount(key, setting.text);
    else this.#readChoice(parameter, setting.text);
  }

  #readLengths(key: string, count: 1 | 2 | 3, { text }: FormSetting, unit: Unit): void {
    const reading = count === 1 ? parseOne(text.value, unit) : parseSizes(text.value, unit, count);
    if (reading.ok) {
      const parts = reading.value.map(({ length, start, end }) => ({
        value: length,
        at: within(text, start, end),
      }));
      this.#lengths.set(key, parts);
      return;
    }
    const { problem, start, end } = reading;
    const wrong = text.value.slice(start, end);
    const message = `${key} of ${this.piece}: "${wrong}" ${WORDS[problem]}`;
    this.problems.push({
      rule: 'unreadable-length',
      message,
      remedy: REMEDIES[count],
      at: within(text, start, end),
    });
  }

  #readCount(key: string, text: At<string>): void {
    const count = /^\d{1,3}$/u.test(text.value) ? Number(text.value) : 0;
    if (count >= 1 && count <= MOST_COUNTED) this.#counts.set(key, { value: count, at: text.at });
    else {
      const message = `${key} of ${this.piece}: "${text.value}" is no whole number from 1 to ${MOST_COUNTED}`;
      this.problems.push({
        rule: 'unexpected-value',
        message,
        remedy: 'write a whole number, such as 4',
        at: text.at,
      });
    }
  }

  #readChoice({ key, choices = [] }: FormParameter, text: At<string>): void {
    if (choices.includes(text.value)) this.#choices.set(key, text);
    else {
      const message = `${key} of ${this.piece}: "${text.value}" is not ${choices.join(' or ')}`;
      const remedy = `write ${choices.join(' or ')}`;
      this.problems.push({ rule: 'unexpected-value', message, remedy, at: text.at });
    }
  }
}

const WORDS: Record<LengthProblem, string> = {
  empty: 'is empty',
  'not a length': 'is no measurement',
  'decimal comma': 'has a comma in it',
  'denominator of zero': 'divides by zero',
  negative: 'is less than zero',
  zero: 'measures nothing',
  'too long': 'is longer than 1 m',
  'too many sizes': 'has more measurements than belong here',
  'too few sizes': 'has fewer measurements than belong here',
};

const SAMPLES: Readonly<Record<1 | 2 | 3, string>> = { 1: '1/2', 2: '4 1/4 x 5 1/2', 3: '3 1/2 x 1 x 4 3/4' };

const REMEDIES: Readonly<Record<1 | 2 | 3, string>> = {
  1: `write one length, such as ${SAMPLES[1]}`,
  2: `write two lengths with x between, such as ${SAMPLES[2]}`,
  3: `write three lengths with x between, such as ${SAMPLES[3]}`,
};

/** `a tray`, `an envelope`. */
function a(name: string): string {
  return `${/^[aeiou]/iu.test(name) ? 'an' : 'a'} ${name}`;
}

function parseOne(text: string, unit: Unit): ReturnType<typeof parseSizes> {
  const reading: Reading<Length> = parseLength(text, unit);
  return reading.ok ? { ok: true, value: [{ length: reading.value, start: 0, end: text.length }] } : reading;
}

/** The unit the first of the measurements is written in: a box written in millimetres has millimetre tabs. */
function rulingUnit({ parameters }: Subject, written: readonly FormSetting[]): Unit | undefined {
  const measured = written.find(({ key }) => {
    const kind = parameters.find((parameter) => parameter.key === key.value)?.kind;
    return kind !== undefined && LENGTHS[kind] !== undefined;
  });
  const last = measured?.text.value.split(/[x×X]|\bby\b/u).at(-1);
  return (last === undefined ? undefined : writtenUnit(last)) ?? measured?.unit;
}

/** Where a stretch of a text stands, if there is one and the text stands in its file as it is; else the whole text. */
function within({ value, at }: At<string>, start: number, end: number): Place {
  const verbatim = end > start && at.file.text.slice(at.start, at.end) === value;
  return verbatim ? { file: at.file, start: at.start + start, end: at.start + end } : at;
}
