import type { Place } from '../source.ts';

export type YamlNode = YamlText | YamlMap | YamlList | YamlNothing;
export type YamlMap = {
  readonly kind: 'map';
  readonly entries: readonly YamlEntry[];
  readonly at: Place;
} & TellMark;
export type YamlEntry = { readonly key: YamlText; readonly value: YamlNode };
type YamlList = { readonly kind: 'list'; readonly items: readonly YamlNode[]; readonly at: Place } & TellMark;
/** A key or a dash with nothing behind it. */
type YamlNothing = { readonly kind: 'nothing'; readonly at: Place } & TellMark;
type TellMark = { readonly isTold?: boolean };

/** A scalar as written, with where each of its characters stands: inside the quotes, not around them. */
export type YamlText = {
  readonly kind: 'text';
  readonly text: string;
  /** What was typed, of a key that is read as the one meant. */
  readonly typed?: string;
  /** The text without its quotes or block header, or the blanks round it. */
  readonly at: Place;
  /** Where a stretch of `text` stands. */
  readonly place: (start: number, end: number) => Place;
};

/** A text that stands at a place character by character. */
export function textNode(text: string, at: Place): YamlText {
  const place = (start: number, end: number): Place => ({
    ...at,
    start: at.start + start,
    end: at.start + end,
  });
  return { kind: 'text', text, at, place };
}

/** Whether something in it was refused already, so that nothing is said to be missing. */
export function isToldOf(node: YamlNode): boolean {
  return node.kind !== 'text' && node.isTold === true;
}

/** The entries of a map; none of what is no map. */
export function entriesOf(node: YamlNode | undefined): readonly YamlEntry[] {
  return node?.kind === 'map' ? node.entries : [];
}

/** A key of a map and what follows it. */
export function entryOf(node: YamlNode, key: string): YamlEntry | undefined {
  return entriesOf(node).find((entry) => entry.key.text === key);
}

/** Whether a name follows a key, and no size. */
export function isByName(entry: YamlEntry | undefined): boolean {
  const [first] = itemsOf(entry?.value);
  return first?.kind === 'text' && /^\p{L}/u.test(first.text);
}

/** What follows a key that a slip runs on into: `2 x 3` of `cut:2 x 3` and `cut 2 x 3`; undefined of other words. */
export function runOnFrom(key: string, text: string): string | undefined {
  const rest = text.startsWith(key) ? text.slice(key.length) : '';
  // Words that only happen to begin like a key, such as `each of them`, are none.
  return /^(?::\s*(?=\S)|\s+(?=\d|\S+$))(.+)$/u.exec(rest)?.[1];
}

/** Whether a key is there after all, run on into what belongs behind it. */
export function isRunOn(node: YamlNode, key: string): boolean {
  return entriesOf(node).some(
    (entry) => entry.value.kind === 'nothing' && runOnFrom(key, entry.key.text) !== undefined,
  );
}

/** The items of a list; one value alone is a list of one, nothing an empty one. */
export function itemsOf(node: YamlNode | undefined): readonly YamlNode[] {
  const items = node?.kind === 'list' ? node.items : node ? [node] : [];
  return items.filter(({ kind }) => kind !== 'nothing');
}
