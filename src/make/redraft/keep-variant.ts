import { isMap, isScalar, type Node, type Pair, type YAMLMap } from 'yaml';
import { splitSheet } from '../../project/frontmatter.ts';
import type { SourceFile } from '../../project/source.ts';
import { parseYaml } from '../../project/yaml/parse-yaml.ts';
import { AS_TYPED } from '../../project/yaml/yaml-problem.ts';
import { addBeside, applyEdits, type Edit } from './edits.ts';

type TextRange = { readonly start: number; readonly end: number };

/** A value that a variant has for itself: where it stands, and where it is to stand when nothing is left of the variants. */
type MovedText = TextRange & { readonly place: (text: string) => Edit };

/**
 * A sheet with one of its variants kept as the project itself: the edits of that variant made, its own values put where
 * the common ones stand, and `variants:` taken out. Or why that cannot be.
 */
export function keepVariant(
  file: SourceFile,
  variant: string,
): ((edits: readonly Edit[]) => string) | { readonly why: string } {
  const { yaml } = splitSheet(file);
  const root = yaml && parseYaml(yaml.text, AS_TYPED).contents;
  const block = isMap(root) ? root.get('measurements') : undefined;
  if (!yaml || !isMap(root) || !isMap(block)) return { why: 'its head cannot be read' };
  const sheet = new Sheet(file, yaml.offset, block);
  const entries = [root, block].flatMap((map) => pairOf(map, 'variants') ?? []);
  const moves = entries.flatMap(({ value }) => {
    const own = isMap(value) ? pairOf(value, variant)?.value : undefined;
    return isMap(own) ? own.items.flatMap((pair) => sheet.movesIn(pair, [])) : [];
  });
  const gone = entries.map((pair) => sheet.linesOf(pair));
  if (moves.some(({ start, end }) => file.text.slice(start, end).includes('\n')))
    return { why: `a value of its variant ${variant} is on several lines: write it on one` };
  if (gone.some(({ start }) => !/^\s*variants/u.test(file.text.slice(start))))
    return { why: 'its variants stand on a line with other keys: give them lines of their own' };
  return (edits) => {
    const isIn = (edit: TextRange, { start, end }: TextRange): boolean =>
      edit.start >= start && edit.end <= end;
    const placed = moves.map((move) => {
      const own = edits.filter((edit) => isIn(edit, move));
      const shifted = own.map(({ start, end, text }) => ({
        start: start - move.start,
        end: end - move.start,
        text,
      }));
      return move.place(applyEdits(file.text.slice(move.start, move.end), shifted));
    });
    const common = edits.filter((edit) => !gone.some((stretch) => isIn(edit, stretch)));
    return applyEdits(file.text, [
      ...common,
      ...placed,
      ...gone.map((stretch) => ({ ...stretch, text: '' })),
    ]);
  };
}

class Sheet {
  readonly #file: SourceFile;
  readonly #offset: number;
  readonly #block: YAMLMap;

  constructor(file: SourceFile, offset: number, block: YAMLMap) {
    this.#file = file;
    this.#offset = offset;
    this.#block = block;
  }

  /** Every value of a variant under a path, each with its way in the measurement block. */
  movesIn({ key, value }: Pair, before: readonly string[]): readonly MovedText[] {
    const path = [...before, ...wordsOf(key)];
    if (before.length === 0 && path.join() === 'name') return [];
    if (isMap(value) && value.items.length > 0)
      return value.items.flatMap((pair) => this.movesIn(pair, path));
    const pieces = this.#block.get('pieces');
    const way = isMap(pieces) && pieces.has(path[0]) ? ['pieces', ...path] : path;
    return [{ ...this.#stretchOf(value as Node), place: this.#placeAt(this.#block, way) }];
  }

  #placeAt(map: YAMLMap, [key = '', ...rest]: readonly string[]): MovedText['place'] {
    const there = pairOf(map, key)?.value;
    if (isMap(there) && rest.length > 0) return this.#placeAt(there, rest);
    if (there && rest.length === 0) return (text) => ({ ...this.#stretchOf(there as Node), text });
    const within = (text: string): string => rest.reduceRight((inner, word) => `{ ${word}: ${inner} }`, text);
    return (text) => addBeside({ file: this.#file, ...this.#stretchOf(map) }, key, within(text));
  }

  /** The lines that a key and what follows it take up. */
  linesOf({ key, value }: Pair): TextRange {
    const { text } = this.#file;
    const { start } = this.#stretchOf(key as Node);
    const { end } = this.#stretchOf((value ?? key) as Node);
    const last = text.slice(0, end).trimEnd().length;
    const after = text.indexOf('\n', last);
    return { start: text.lastIndexOf('\n', start) + 1, end: after < 0 ? text.length : after + 1 };
  }

  #stretchOf({ range }: Node): TextRange {
    const [start = 0, end = 0] = range ?? [];
    return { start: start + this.#offset, end: end + this.#offset };
  }
}

function pairOf(map: YAMLMap, name: string): Pair | undefined {
  return map.items.find(({ key }) => wordOf(key) === name);
}

function wordsOf(key: unknown): readonly string[] {
  return wordOf(key)
    .split('.')
    .map((word) => word.trim());
}

function wordOf(key: unknown): string {
  return isScalar(key) ? String(key.value) : '';
}
