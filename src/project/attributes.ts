import type { Directive } from './directives.ts';
import { placeOf } from './markdown.ts';
import type { Place, SourceFile } from './source.ts';
import { textNode, type YamlMap } from './yaml-node.ts';

/** The attributes of a directive as a map like any other; one without a value is an empty text. */
export function attributeMap(node: Directive, file: SourceFile): YamlMap {
  const entries = Object.entries(node.attributes ?? {}).map(([key, value]) => ({
    key: textNode(key, attributePlace(node, key, file, 'key')),
    value: textNode(value ?? '', attributePlace(node, key, file, 'value')),
  }));
  return { kind: 'map', entries, at: placeOf(node, file) };
}

/** Where an attribute's value stands (or its key, where it has none or that is asked for). */
function attributePlace(node: Directive, key: string, file: SourceFile, part: 'key' | 'value'): Place {
  const whole = placeOf(node, file);
  const source = file.text.slice(whole.start, whole.end);
  const braces = source.lastIndexOf('{');
  const escaped = key.replace(/[^\w-]/gu, '\\$&');
  const value = String.raw`"([^"]*)"|'([^']*)'|([^\s"'}]+)`;
  const found = new RegExp(String.raw`(?<=[{\s])${escaped}(?:\s*=\s*(?:${value}))?`, 'u').exec(
    source.slice(Math.max(braces, 0)),
  );
  if (!found) return whole;
  const start = whole.start + Math.max(braces, 0) + found.index;
  const end = start + found[0].length;
  if (part === 'key') return { file, start, end: start + key.length };
  const quoted = found[1] ?? found[2];
  const written = quoted ?? found[3] ?? '';
  if (written === '') return { file, start, end };
  const last = quoted === undefined ? end : end - 1;
  return { file, start: last - written.length, end: last };
}
