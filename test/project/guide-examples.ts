import { isMap, isScalar, isSeq, type Node, parseDocument } from 'yaml';
import type { Schema } from '../../src/project/grammar/grammar.ts';
import { blocksOf, PAGES } from '../docs/pages.ts';
import { SHEET, wholeWorkspace } from '../docs/whole-sheet.ts';
import { SELDOM_WRITTEN } from './seldom-written.ts';

/** How a key of a map is written somewhere, by the map's schema and the key. */
export type Examples = Map<Schema, Map<string, string[]>>;

/** What stands beside a key in a table is short. */
const LONGEST = 90;

type Root = 'sheet' | 'site' | 'shared';

/** Texts that proof clean, as other tests hold: those of the guide, then what it has none of. */
function texts(): readonly (readonly [root: Root, text: string])[] {
  const pages = PAGES.filter(({ path }) => /writing-a-project|class-kit|cutting|tour|README/u.test(path));
  const told = pages
    .flatMap(blocksOf)
    .filter(({ language }) => language === 'yaml' || language === 'markdown')
    .flatMap((block) => Object.entries(wholeWorkspace(block)));
  return [...told, ...Object.entries(SELDOM_WRITTEN)].flatMap(([path, text]): [Root, string][] => {
    if (path === SHEET || path.endsWith('sheet.md')) return [['sheet', text.split(/^---$/mu)[1] ?? '']];
    if (path.endsWith('site.yaml')) return [['site', text]];
    return /^shared\//u.test(path) ? [['shared', text]] : [];
  });
}

/** Every key of every map of these schemas as it is written somewhere, in the order of the texts. */
export function examplesOf(schemas: Readonly<Record<Root, Schema>>): Examples {
  const examples: Examples = new Map();
  for (const [name, text] of texts()) {
    const defs = schemas[name].$defs as Readonly<Record<string, Schema>> | undefined;
    const { contents } = parseDocument(text);
    if (contents) collect(contents, schemas[name], { text, defs: defs ?? {}, examples });
  }
  return examples;
}

type Walk = {
  readonly text: string;
  readonly defs: Readonly<Record<string, Schema>>;
  readonly examples: Examples;
};

function collect(node: Node, schema: Schema, walk: Walk): void {
  const kinds = kindsOf(schema, walk.defs);
  if (isSeq<Node>(node)) {
    for (const item of node.items)
      for (const { items } of kinds) if (isSchema(items)) collect(item, items, walk);
  }
  if (!isMap<Node, Node | null>(node)) return;
  for (const { key, value } of node.items) {
    if (!isScalar(key) || !value) continue;
    const name = String(key.value);
    for (const kind of kinds) {
      if (kind.properties?.[name]) note(kind, name, value, walk);
      const within = kind.properties?.[name] ?? kind.additionalProperties;
      if (isSchema(within)) collect(value, within, walk);
    }
  }
}

/** What is on a line of its own; a block of lines is shown in the guide's text. */
function note(kind: Schema, key: string, node: Node, { text, examples }: Walk): void {
  if ((isMap(node) || isSeq(node)) && !node.flow) return;
  const written = node.range ? text.slice(node.range[0], node.range[1]).trim() : '';
  if (written === '' || written.includes('\n') || written.length > LONGEST) return;
  const ofKind = examples.get(kind) ?? new Map<string, string[]>();
  examples.set(kind, ofKind.set(key, [...(ofKind.get(key) ?? []), written]));
}

/** A schema and all that it may be instead. */
function kindsOf(schema: Schema, defs: Walk['defs']): Schema[] {
  const { $ref, anyOf, then, else: otherwise } = schema;
  const named = typeof $ref === 'string' ? defs[$ref.replace('#/$defs/', '')] : undefined;
  const others = [named, then, otherwise, ...(Array.isArray(anyOf) ? anyOf : [])];
  return [schema, ...others.flatMap((each) => (isSchema(each) ? kindsOf(each, defs) : []))];
}

function isSchema(value: unknown): value is Schema {
  return typeof value === 'object' && value !== null;
}

/** How the attributes of a directive are written: `minutes=12`, `ahead`. */
export function attributesOf(directive: string): ReadonlyMap<string, string> {
  const written = PAGES.flatMap(({ text }) => [
    ...text.matchAll(new RegExp(`${directive}\\{([^}…]+)\\}`, 'gu')),
  ]);
  const parts = written.flatMap(([, inside = '']) => inside.match(/\w+(?:=(?:"[^"]*"|[^\s"]+))?/gu) ?? []);
  return new Map(parts.map((part) => [part.split('=')[0] ?? '', part]));
}
