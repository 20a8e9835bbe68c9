import type { Length } from '../../measure/length.ts';
import type { FormGrammar, FormSetting } from '../../project/model.ts';
import type { At, Place } from '../../project/source.ts';
import type { FormRequest } from '../form.ts';
import type { ShapeProblem } from '../shapes.ts';
import { type Ruler, roundDown, roundUp, rulerOf, say } from './ruler.ts';

/** The rule that reports what a form cannot be. */
const LIMIT = 'form-limit';

/**
 * The measurements of one form, as its `measure` asks for them. Whatever the form refuses is collected in `problems`,
 * each at the very characters.
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
  readonly #grammar: FormGrammar;
  readonly #written: ReadonlyMap<string, FormSetting>;

  constructor(grammar: FormGrammar, { piece, settings, ruler, metric, caliper }: FormRequest) {
    this.#grammar = grammar;
    this.#written = settings;
    this.piece = piece.id.value;
    this.at = piece.body.kind === 'form' ? piece.body.form.at : piece.id.at;
    this.caliper = caliper;
    this.corners = piece.corners;
    this.ruler = rulerOf(ruler, metric);
  }

  has(key: string): boolean {
    return this.#written.has(key);
  }

  /** One length; what the form takes where none is written. */
  length(key: string, customary: Length): At<Length> {
    return this.lengths(key)[0] ?? { value: customary, at: this.at };
  }

  /** Two or three lengths, in the order written; empty where none are. */
  lengths(key: string): readonly At<Length>[] {
    const setting = this.#written.get(key);
    return setting?.kind === 'lengths' ? setting.lengths : [];
  }

  count(key: string, customary: number): At<number> {
    const setting = this.#written.get(key);
    return setting?.kind === 'count'
      ? { value: setting.count, at: setting.at }
      : { value: customary, at: this.at };
  }

  /** One of the parameter's choices; the first where none is written. */
  choice(key: string): string {
    const setting = this.#written.get(key);
    if (setting?.kind === 'word') return setting.word;
    return this.#grammar.parameters.find((parameter) => parameter.key === key)?.choices?.[0] ?? '';
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
}
