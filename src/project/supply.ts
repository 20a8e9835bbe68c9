import type { At, Place } from './source.ts';
import type { Money } from './stock.ts';

export const SUPPLY_KINDS = [
  'tool',
  'adhesive',
  'ink',
  'stamp',
  'die',
  'punch',
  'embellishment',
  'filling',
  'other',
] as const;
export type SupplyKind = (typeof SUPPLY_KINDS)[number];

export type Supply = {
  /** The value of `shared/` that it begins from: `shared.tape`. */
  readonly use?: At<string>;
  readonly item: At<string>;
  readonly kind: At<SupplyKind>;
  /** What it is used for, and the set or range it comes from. */
  readonly for?: At<string>;
  readonly from?: At<string>;
  /** `#rrggbb`, lower case. */
  readonly color?: At<string>;
  readonly instead?: At<string>;
  /** `YYYY-MM-DD`: the last day it can be had. */
  readonly until?: At<string>;
  /** http or https only. */
  readonly link?: At<string>;
  /** The link earns the demonstrator something. */
  readonly paid: boolean;
  /** How much one attendee uses: a count or a length; and how it is sold. */
  readonly each?: At<string>;
  readonly pack?: At<string>;
  readonly onHand?: At<string>;
  readonly price?: At<Money>;
  /** One serves several attendees: a shared tool. */
  readonly share?: At<number>;
  readonly at: Place;
};
