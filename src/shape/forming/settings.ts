import type { Length } from '../../measure/length.ts';
import type { Finding } from '../../project/finding.ts';
import type { FormGrammar, FormSetting } from '../../project/model.ts';
import type { At, Place } from '../../project/source.ts';
import type { FormRequest } from '../form.ts';
import { type Ruler, rulerOf, say } from './ruler.ts';

/**
 * The measurements of one form, as its `measure` asks for them. Whatever the form refuses is collected in `findings`,
 * each at the very characters.
 */
export class Settings {
  readonly ruler: Ruler;
  readonly caliper: Length;
  /** The radius of the piece's rounded corners. */
  readonly corners: At<Length> | undefined;
  /** The piece's id, which messages begin with. */
  readonly piece: string;
  readonly findings: Finding<'form-limit'>[] = [];
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
  refuse(at: Place, reason: string, remedy: string): void {
    this.findings.push({ rule: 'form-limit', at, facts: { reason, remedy } });
  }

  /** Refuses a length under the least; `what` it is precedes the piece's name: `the depth`. */
  refuseUnder(given: At<Length>, least: Length, what: string, why: string): void {
    if (given.value.lessThan(least)) this.#refuse(given, 'least', least, what, why);
  }

  /** Refuses a length over the most. */
  refuseOver(given: At<Length>, most: Length, what: string, why: string): void {
    if (given.value.greaterThan(most)) this.#refuse(given, 'most', most, what, why);
  }

  say(length: Length): string {
    return say(this.ruler, length);
  }

  #refuse(
    { value, at }: At<Length>,
    bound: 'least' | 'most',
    limit: Length,
    what: string,
    why: string,
  ): void {
    const measure = `${what} of ${this.piece}`;
    const facts = { measure, length: value, bound, limit, ruler: this.ruler, why };
    this.findings.push({ rule: 'form-limit', at, facts });
  }
}
