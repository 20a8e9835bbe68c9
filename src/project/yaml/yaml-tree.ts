import {
  type Alias,
  type Document,
  isAlias,
  isMap,
  isNode,
  isScalar,
  isSeq,
  type Node,
  type Scalar,
  visit,
  type YAMLMap,
} from 'yaml';
import type { Finding } from '../finding.ts';
import { placeInYaml, type YamlSource } from '../frontmatter.ts';
import { pairsOf } from '../reading/decimal-commas.ts';
import { type Place, textAt } from '../source.ts';
import { parseYaml } from './parse-yaml.ts';
import type { YamlEntry, YamlMap, YamlNode, YamlText } from './yaml-node.ts';
import { AS_TYPED, yamlProblem } from './yaml-problem.ts';

/** What a YAML text says, and what is wrong with it; `broken` when nothing of it can be trusted. */
type YamlReading = {
  readonly root: YamlNode;
  readonly broken: boolean;
  readonly findings: readonly Finding[];
};

/**
 * Reads YAML into maps, lists and texts. Every scalar stays the text that was typed: `010`, `0.1`, `yes` and
 * `2026-12-10` are read by what they are for, never by YAML's own guesses. Of a repeated key the first counts.
 * Anchors and aliases are followed; a merge (`<<`) and an alias within its own value are refused.
 */
export function readYaml(yaml: YamlSource): YamlReading {
  const document = parseYaml(yaml.text, AS_TYPED);
  const [error] = document.errors;
  const whole = placeInYaml(yaml, 0, 0);
  if (error) {
    const { problem, remedy, start, end } = yamlProblem(error, yaml.text);
    const at = placeInYaml(yaml, start, end);
    const isHead = yaml.text !== yaml.file.text;
    const facts = { problem, isHead, ...(remedy !== undefined && { remedy }) };
    return {
      root: { kind: 'nothing', at: whole },
      broken: true,
      findings: [{ rule: 'broken-yaml', at, facts }],
    };
  }
  const growing = new Tree(yaml, document);
  const root = growing.node(document.contents, whole);
  return { root, broken: false, findings: growing.findings };
}

/** Characters that a screen or a file may take for commands; only line breaks and tabs are typed. */
const UNSEEN = /(?![\t\n\r])\p{Cc}/u;

/** What each alias stands for: the last value before it that has its name. */
function targetsIn(document: Document): ReadonlyMap<Alias, Node> {
  const named = new Map<string, Node>();
  const targets = new Map<Alias, Node>();
  visit(document, (_, node) => {
    if (isAlias(node)) {
      const target = named.get(node.source);
      if (target) targets.set(node, target);
    } else if (isNode(node) && node.anchor) named.set(node.anchor, node);
  });
  return targets;
}

class Tree {
  readonly findings: Finding[] = [];
  readonly #yaml: YamlSource;
  readonly #targets: ReadonlyMap<Alias, Node>;
  readonly #grown: Map<Node, YamlNode> = new Map();
  readonly #growing: Set<Node> = new Set();

  constructor(yaml: YamlSource, document: Document) {
    this.#yaml = yaml;
    this.#targets = targetsIn(document);
  }

  /** `fallback` is the place of a value that isn't there: that of its key. */
  node(node: unknown, fallback: Place): YamlNode {
    if (isAlias(node)) return this.#alias(node);
    if (isScalar(node)) {
      const nothing = node.value === null || (node.value === '' && node.type === 'PLAIN');
      if (nothing) return { kind: 'nothing', at: fallback };
      const text = yamlText(node, this.#yaml);
      if (UNSEEN.test(text.text)) this.#refuse(text.at, 'unseen character');
      return text;
    }
    if (!isMap(node) && !isSeq(node)) return { kind: 'nothing', at: fallback };
    const before = this.#grown.get(node);
    if (before) return before;
    this.#growing.add(node);
    const at = this.#placeOf(node);
    const grown: YamlNode = isMap(node)
      ? this.#map(node, at)
      : { kind: 'list', items: node.items.map((item) => this.node(item, at)), at };
    this.#growing.delete(node);
    this.#grown.set(node, grown);
    return grown;
  }

  #map(map: YAMLMap, at: Place): YamlMap {
    let isTold = false;
    const entries = new Map<string, YamlEntry>();
    for (const { key, value } of pairsOf(map, this.#yaml.text)) {
      const keyPlace = this.#keyPlace(key, at);
      const read = this.node(key, keyPlace);
      const text = read.kind === 'text' ? read.text.trim() : '';
      const first = entries.get(text);
      if (read.kind !== 'text' || text === '') isTold = this.#refuse(keyPlace, 'no key');
      else if (first)
        this.findings.push({ rule: 'repeated-key', at: read.at, facts: { key: text, first: first.key.at } });
      else if (text === '<<') isTold = this.#refuse(read.at, 'merge');
      else entries.set(text, { key: { ...read, text }, value: this.node(value, read.at) });
    }
    return { kind: 'map', entries: [...entries.values()], at, isTold };
  }

  /** The place of a key, quotes included; of one that isn't there, that of its colon. */
  #keyPlace(key: unknown, fallback: Place): Place {
    if (!isNode(key)) return fallback;
    const place = this.#placeOf(key);
    if (place.start < place.end) return place;
    const colon = place.file.text.indexOf(':', place.start);
    return colon < 0 ? fallback : { ...place, start: colon, end: colon + 1 };
  }

  #alias(alias: Alias): YamlNode {
    const at = this.#placeOf(alias);
    const target = this.#targets.get(alias);
    if (target && !this.#growing.has(target)) return this.node(target, at);
    this.#refuse(at, 'alias of nothing', alias.source);
    return { kind: 'nothing', at, isTold: true };
  }

  #refuse(at: Place, misfit: 'no key' | 'merge' | 'alias of nothing' | 'unseen character', other = ''): true {
    this.findings.push({ rule: 'unexpected-value', at, facts: { misfit, actual: textAt(at), other } });
    return true;
  }

  #placeOf(node: Node): Place {
    const [start, end] = node.range ?? [0, 0];
    return placeInYaml(this.#yaml, start, end);
  }
}

/** Reads a scalar's text and the offsets of its characters. */
function yamlText(scalar: Scalar, yaml: YamlSource): YamlText {
  const text = typeof scalar.value === 'string' ? scalar.value : (scalar.source ?? '');
  const [start, end] = scalar.range ?? [0, 0];
  const raw = yaml.text.slice(start, end);
  const spans = spansOf(text, raw, quoteOf(scalar, raw));
  const place = (from: number, to: number): Place => {
    const first = spans[from]?.start ?? spans.at(-1)?.end ?? 0;
    const last = to > from ? (spans[to - 1]?.end ?? first) : first;
    return placeInYaml(yaml, start + first, start + last);
  };
  const lead = text.length - text.trimStart().length;
  return { kind: 'text', text, at: place(lead % text.length || 0, text.trimEnd().length), place };
}

/** How many characters of `raw` stand before the text itself, and whether a backslash escapes there. */
type Quote = { readonly lead: number; readonly escapes: 'backslash' | 'doubled quote' | 'none' };

function quoteOf(scalar: Scalar, raw: string): Quote {
  if (scalar.type === 'QUOTE_DOUBLE') return { lead: 1, escapes: 'backslash' };
  if (scalar.type === 'QUOTE_SINGLE') return { lead: 1, escapes: 'doubled quote' };
  if (scalar.type === 'BLOCK_LITERAL' || scalar.type === 'BLOCK_FOLDED') {
    return { lead: raw.search(/[\r\n]|$/u), escapes: 'none' };
  }
  return { lead: 0, escapes: 'none' };
}

type Span = { readonly start: number; readonly end: number };

/**
 * The stretch of `raw` that spells each UTF-16 unit of `text`. YAML only ever escapes characters and takes white
 * space away (folding, indentation), so the two can be walked side by side.
 */
function spansOf(text: string, raw: string, { lead, escapes }: Quote): Span[] {
  const spans: Span[] = [];
  let start = lead;
  for (const character of text) {
    if (/\S/u.test(character)) start = afterBlank(raw, start, escapes);
    const end = Math.min(start + lengthIn(raw, start, character, escapes), raw.length);
    for (let unit = 0; unit < character.length; unit += 1) spans.push({ start, end });
    start = end;
  }
  return spans;
}

/** Past white space, and past a backslash that joins two lines. */
function afterBlank(raw: string, from: number, escapes: Quote['escapes']): number {
  const blank = escapes === 'backslash' ? /(?:\s|\\\r?\n)*/uy : /\s*/uy;
  blank.lastIndex = from;
  blank.exec(raw);
  return Math.max(blank.lastIndex, from);
}

/** How many characters of `raw` spell the one character read at `at`. */
function lengthIn(raw: string, at: number, character: string, escapes: Quote['escapes']): number {
  if (escapes === 'backslash' && raw[at] === '\\') return escapeLength(raw, at);
  if (escapes === 'doubled quote' && character === "'") return 2;
  if (raw.startsWith(character, at)) return character.length;
  return /\s/u.test(raw[at] ?? '') ? 1 : 0;
}

/** `\x41`, `\u00bd` and `\U0001f600` have 2, 4 and 8 digits; every other escape is one character. */
function escapeLength(raw: string, at: number): number {
  const digits = { x: 2, u: 4, U: 8 }[raw[at + 1] ?? ''] ?? 0;
  return 2 + digits;
}
