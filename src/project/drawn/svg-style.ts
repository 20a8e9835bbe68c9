/** An element and what is said of how it is drawn. */
export type AsDrawn = { readonly name: string; readonly attributes: Readonly<Record<string, string>> };

/** What moves, hides or cuts off what a path draws, so that its own numbers no longer say how it looks. */
const ALTERING: ReadonlySet<string> = new Set([
  'transform',
  'scale',
  'rotate',
  'translate',
  'zoom',
  'offset-path',
  'clip-path',
  'mask',
  'visibility',
]);

type Declaration = readonly [name: string, value: string];

/** Whether an element draws nothing, as a hidden layer does. */
export function isHidden({ attributes }: AsDrawn): boolean {
  return [...Object.entries(attributes), ...stylesOf(attributes)].some(isHiding);
}

/** What makes an element look otherwise than its path says: `transform`. */
export function alterationOf({ attributes }: AsDrawn): string | undefined {
  const styles = stylesOf(attributes);
  const [name] =
    [...Object.entries(attributes), ...styles].find(isAltering) ?? styles.find(isRedrawing) ?? [];
  return name;
}

/** The same of a style sheet; nobody asks here which elements it is about. */
export function sheetAlteration(text: string): string | undefined {
  const found = declarationsIn(text).find((each) => isAltering(each) || isHiding(each) || isRedrawing(each));
  return found?.[0];
}

function isHiding([name, value]: Declaration): boolean {
  return name === 'display' && value === 'none';
}

function isAltering([name, value]: Declaration): boolean {
  return ALTERING.has(name) && !['', 'none', 'visible', 'inherit'].includes(value.trim());
}

/** In a style, `d` draws another path than the attribute. */
function isRedrawing([name]: Declaration): boolean {
  return name === 'd';
}

function stylesOf({ style = '' }: AsDrawn['attributes']): readonly Declaration[] {
  return declarationsIn(`{${style}`);
}

function declarationsIn(css: string): readonly Declaration[] {
  const plain = css.replaceAll(/\/\*.*?(?:\*\/|$)/gsu, ' ').toLowerCase();
  const found = plain.matchAll(/[{;]\s*([a-z-]+)\s*:\s*([^;{}]*)/gu);
  return [...found].map(([, name = '', value = '']) => [name, value.replace('!important', '').trim()]);
}
