import type { Length, Unit } from '../measure/length.ts';
import type { FormSetting, Piece } from '../project/model.ts';
import type { Net } from './net.ts';
import type { ShapeProblem } from './shapes.ts';

/** One measurement a form takes. */
export type FormParameter = {
  readonly key: string;
  /** `size` is W x H, `volume` W x D x H (the order is said in `says`), `choice` one of `choices`. */
  readonly kind: 'length' | 'size' | 'volume' | 'count' | 'choice';
  readonly choices?: readonly string[];
  readonly required: boolean;
  /** One sentence for the docs and messages, its default included. */
  readonly says: string;
};

/** What a form is built from: what was written, the unit of bare numbers, the paper's thickness. */
export type FormRequest = {
  readonly piece: Piece;
  readonly settings: ReadonlyMap<string, FormSetting>;
  readonly unit: Unit;
  readonly caliper: Length;
};

export type FormResult =
  | { readonly ok: true; readonly net: Net }
  | { readonly ok: false; readonly problems: readonly ShapeProblem[] };

/** A ready-made parametric shape. One file each in `forms/`. */
export type Form = {
  /** As written behind `form:`, such as `clip-top box`. */
  readonly name: string;
  readonly summary: string;
  readonly parameters: readonly FormParameter[];
  /** The names of its panels that can be bases, for messages and docs. */
  readonly panels: readonly string[];
  readonly build: (request: FormRequest) => FormResult;
};
