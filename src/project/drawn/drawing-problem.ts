import type { Length } from '../../measure/length.ts';

/** What keeps an outline from being taken from a drawing, with what the words about it need. */
export type DrawingProblem =
  | { readonly kind: 'no svg' | 'no size' | 'other element' | 'no path data'; readonly what: string }
  | { readonly kind: 'altered'; readonly what: string; readonly by: string }
  | { readonly kind: 'paths' | 'parts'; readonly count: number }
  | { readonly kind: 'points'; readonly count: number; readonly most: number }
  | { readonly kind: 'stretched'; readonly across: Length; readonly down: Length }
  | { readonly kind: 'open'; readonly gap: Length }
  | { readonly kind: 'crosses' | 'size'; readonly x: Length; readonly y: Length };
