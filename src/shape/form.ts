import type { Length, Unit } from '../measure/length.ts';
import type { Finding } from '../project/finding.ts';
import type { FormGrammar, FormSetting } from '../project/grammar/form-grammar.ts';
import type { Piece, Project } from '../project/model.ts';
import type { Net } from './net.ts';
import type { Sheet } from './sheets.ts';

/** What a form is built from: what was written, what it is measured with, the paper's thickness. */
export type FormRequest = {
  readonly piece: Piece;
  readonly settings: ReadonlyMap<string, FormSetting>;
  readonly ruler: Unit;
  /** Whether what a form works out in millimeters is whole ones or may be halves; whole when absent. */
  readonly metric?: Project['metric'];
  readonly caliper: Length;
};

/** A further sheet of a form made of more than one: the lid of a lidded tray. */
export type FormPart = Required<Sheet>;

/**
 * What a form became. `net` is the piece itself (`box`); each of `parts` is cut from another sheet (`box.lid`). Panel names are unique across all of them, so
 * that `on: box.top` names one panel whichever sheet it is on.
 */
type FormResult =
  | { readonly ok: true; readonly net: Net; readonly parts: readonly FormPart[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** What `draft` starts a project of this form with, in inches; everything is cut from 8 1/2 x 11 in sheets. */
type FormExample = {
  /** `key: value` lines of the piece: `inside: 2 3/4 x 1 x 4`. */
  readonly settings: readonly string[];
  /** A layer that shows 1/8 in of its panel all round. */
  readonly layer?: { readonly panel: string; readonly cut: string };
};

/** A ready-made parametric shape. One file each in `forms/`. */
export type Form = FormGrammar & {
  readonly summary: string;
  /** The names of its panels that can be bases, for messages and docs. */
  readonly panels: readonly string[];
  readonly example: FormExample;
  /** How the folded shape is closed and used, in a sentence or two for the last step of a sheet. */
  readonly closing: string;
  /** It goes with something else, round it or on it, and is hardly ever what a project is about. */
  readonly accessory?: true;
  /** It goes by mail once it is folded flat: a card in an envelope, or an envelope with a card in it. */
  readonly mailed?: 'card' | 'envelope';
  /** It is a band round something else. */
  readonly goesRound?: true;
  readonly build: (request: FormRequest) => FormResult;
};
