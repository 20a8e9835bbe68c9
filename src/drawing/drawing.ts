/** A drawing ready to be set in a page. */
export type Drawing = {
  /** A complete `<svg>` element: role="img", an aria-label, a viewBox in millimetres of paper, no fixed colours of text. */
  readonly svg: string;
  /** What the drawing shows, with its measurements, for who cannot see it. */
  readonly alternative: string;
  /** The size it wants on paper, in millimetres. */
  readonly width: number;
  readonly height: number;
};
