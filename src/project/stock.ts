import type { Length } from '../measure/length.ts';
import type { AtSize } from './sizes-as-written.ts';
import type { At } from './source.ts';

/** What a basis weight is stated for; the same number means different paper in each grade. */
export const GRADES = ['cover', 'text', 'index', 'bristol', 'tag', 'bond'] as const;
export type Grade = (typeof GRADES)[number];

/** `80 lb cover` or `216 gsm`. */
export type PaperWeight =
  | { readonly kind: 'basis'; readonly pounds: number; readonly grade: Grade }
  | { readonly kind: 'grammage'; readonly gsm: number };

/** A paper or cardstock as it is bought. */
export type Stock = {
  /** The name pieces use: `moss`, or `shared.moss` for one from `shared/`; also its key in the project's map. */
  readonly id: At<string>;
  /** The value of `shared/` it begins with: `shared.moss`. */
  readonly use?: At<string>;
  readonly name: string;
  /** Every sheet it is sold in where people measure as the project does; empty when none is given. */
  readonly sheets: readonly StockSheet[];
  /** The same where people measure in the other unit: the paper of the other edition. */
  readonly otherSheets: readonly StockSheet[];
  readonly weight?: At<PaperWeight>;
  readonly caliper?: At<Length>;
  /** `#rrggbb`, lower case. */
  readonly color?: At<string>;
  /** The set or range it comes from. */
  readonly from?: At<string>;
  /** An upright print must not be turned when it is cut. */
  readonly print?: At<'upright' | 'any way'>;
  /** `YYYY-MM-DD`: the last day it can be had; and the stock that takes its place then. */
  readonly until?: At<string>;
  readonly instead?: At<string>;
  /** The direction the fibers run on the sheet as given (width × height). */
  readonly grain?: At<'width' | 'height'>;
};

/** The units paper is sold by. */
export type PaperUnit = 'in' | 'mm';

/** A size of sheet, and how it is bought. */
export type StockSheet = {
  readonly size: AtSize;
  readonly unit: PaperUnit;
  /** Of one sheet. */
  readonly price?: At<Money>;
  /** Sheets in a pack, and sheets in the cupboard already. */
  readonly pack?: At<number>;
  readonly onHand?: At<number>;
};

/** An amount in the currency's smallest unit (cents), never a floating-point number. */
export type Money = { readonly minor: bigint };
