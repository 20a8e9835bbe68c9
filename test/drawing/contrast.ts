import axe from 'axe-core';

/** The part of axe-core that its types leave out. */
type ColorTools = {
  readonly Color: new () => { parseString(color: string): void };
  readonly getContrast: (ground: object, letters: object) => number;
};

const { Color, getContrast } = (axe as unknown as { commons: { color: ColorTools } }).commons.color;

/** The contrast ratio of two colors as axe-core reckons it (WCAG 2.2, "contrast ratio"). */
export function contrast(one: string, other: string): number {
  const [ground, letters] = [new Color(), new Color()];
  ground.parseString(one);
  letters.parseString(other);
  return getContrast(ground, letters);
}
