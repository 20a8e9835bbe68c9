import type { Length } from '../../measure/length.ts';
import type { RoundedCorners } from '../../project/corners.ts';
import type { Finding } from '../../project/finding.ts';
import type { FormParameter, FormSetting } from '../../project/grammar/form-grammar.ts';
import type { At, Place } from '../../project/source.ts';
import type { FormRequest } from '../form.ts';
import { customary, type Ruler, rulerOf, say } from './ruler.ts';

/** The least or the most a length may be, and why. */
type Limit = { readonly least?: Length; readonly most?: Length; readonly why: string };

/** What the settings are of: a piece, or an opening in one. */
type Asked = Omit<FormRequest, 'piece'> & {
  /** What messages call it: the piece's id. */
  readonly name: string;
  /** Where its form or outline is named: the place of whatever was not written. */
  readonly at: Place;
  readonly corners?: RoundedCorners | undefined;
};

/**
 * The measurements of one form or outline, as it asks for them. Whatever it refuses is collected in `findings`, each at
 * the very characters.
 */
export class Settings {
  readonly ruler: Ruler;
  readonly caliper: Length;
  /** The radius of the piece's rounded corners. */
  readonly corners: RoundedCorners | undefined;
  /** What messages begin with: the piece's id. */
  readonly piece: string;
  readonly findings: Finding<'form-limit'>[] = [];
  /** Every length and number that was asked for, as given or as usual. */
  readonly lengthsTaken: Record<string, Length> = {};
  readonly countsTaken: Record<string, number> = {};
  readonly #at: Place;
  readonly #parameters: readonly FormParameter[];
  readonly #written: ReadonlyMap<string, FormSetting>;

  constructor(parameters: readonly FormParameter[], asked: Asked) {
    const { name, at, corners, settings, ruler, metric, caliper } = asked;
    this.#parameters = parameters;
    this.#written = settings;
    this.piece = name;
    this.#at = at;
    this.caliper = caliper;
    this.corners = corners;
    this.ruler = rulerOf(ruler, metric);
  }

  has(key: string): boolean {
    return this.#written.has(key);
  }

  /** One length, `usual` where none is written. What is beyond a limit is refused, as `what` it is. */
  length(key: string, usual: Length, limits: readonly Limit[] = [], what = `the ${key}`): Length {
    const given = this.lengths(key)[0] ?? { value: usual, at: this.#at };
    this.limit(given.value, given.at, what, ...limits);
    this.lengthsTaken[key] = given.value;
    return given.value;
  }

  /** Two or three lengths, in the order written; empty where none are. */
  lengths(key: string): readonly At<Length>[] {
    const setting = this.#written.get(key);
    return setting?.kind === 'lengths' ? setting.lengths : [];
  }

  count(key: string, usual: number): At<number> {
    const setting = this.#written.get(key);
    const given =
      setting?.kind === 'count' ? { value: setting.count, at: setting.at } : { value: usual, at: this.#at };
    this.countsTaken[key] = given.value;
    return given;
  }

  /** One of the parameter's choices; the first where none is written. */
  choice(key: string): string {
    const setting = this.#written.get(key);
    if (setting?.kind === 'word') return setting.word;
    return this.#parameters.find((parameter) => parameter.key === key)?.choices?.[0] ?? '';
  }

  /** Says what cannot be, with its numbers, and what would put it right. */
  refuse(at: Place, reason: string, remedy: string): void {
    this.findings.push({ rule: 'form-limit', at, facts: { reason, remedy } });
  }

  /** Refuses a length beyond the limit that it is farthest from; `what` it is precedes the piece's name: `the depth`. */
  limit(value: Length, at: Place, what: string, ...limits: readonly Limit[]): void {
    const passed = limits.flatMap(({ least, most, why }) => [
      ...(least && value.lessThan(least) ? [{ bound: 'least', limit: least, why } as const] : []),
      ...(most && value.greaterThan(most) ? [{ bound: 'most', limit: most, why } as const] : []),
    ]);
    const by = ({ limit }: (typeof passed)[number]): Length => limit.minus(value).abs();
    const [worst] = passed.toSorted((a, b) => by(b).compare(by(a)));
    if (!worst) return;
    const facts = { measure: `${what} of ${this.piece}`, length: value, ruler: this.ruler, ...worst };
    this.findings.push({ rule: 'form-limit', at, facts });
  }

  /** Under this no bone folder gets between two score lines. Common practice, no source. */
  get foldable(): Limit {
    return { least: customary(this.ruler, 1, 8), why: 'score lines so close together do not fold cleanly' };
  }

  /** The same for what is folded down its middle. */
  get foldableInHalf(): Limit {
    return { least: customary(this.ruler, 1, 4), why: 'half of it would be too narrow to fold cleanly' };
  }

  say(length: Length): string {
    return say(this.ruler, length);
  }
}
