import type { Ref } from '../ref.ts';
import type { At } from '../source.ts';

/** What a directive within a line may be answered with. */
export const TEXT_REFERENCES = [
  'piece',
  'size',
  'scores',
  'reveal',
  'count',
  'trims',
  'assembly',
  'edge',
  'impressions',
] as const;
export type ReferenceKind = (typeof TEXT_REFERENCES)[number] | 'drawing';

/** A directive that names a piece or a panel: `:piece[front]`, `::drawing{of=box}`. */
export type Reference = {
  readonly kind: ReferenceKind;
  readonly of: At<Ref>;
  /** The `view=` of a drawing. */
  readonly view?: At<string>;
};
