import {
  type Document,
  type DocumentOptions,
  isCollection,
  isPair,
  type Node,
  type ParseOptions,
  parseDocument,
  type SchemaOptions,
  YAMLParseError,
} from 'yaml';

/** What may follow the end of a document and still be no second one: lines of dashes or dots, and comments. */
const NOTHING_MORE = /^(?:(?:---|\.\.\.)?[ \t]*(?:#.*)?(?:\r\n?|\n|$))*$/u;

/** Nothing that a person writes is nested as deep. Whoever looks at what was parsed goes down one call a level. */
const DEEPEST = 100;

/** What puts a value deep in others within one line. */
const DEEP = /(?:[-?:][ \t]+){100}|(?:[[{][ \t]*){100}/u;

function parsed(text: string, options: ParseOptions & DocumentOptions & SchemaOptions): Document.Parsed {
  try {
    const document = parseDocument(text, options);
    const deep = nodeBelow(DEEPEST, document.contents);
    return deep ? tooDeep(text, deep.range?.[0] ?? 0, options) : document;
  } catch (error) {
    // What is nested by the thousand exhausts the parser's own stack.
    if (error instanceof RangeError) return tooDeep(text, Math.max(text.search(DEEP), 0), options);
    throw error;
  }
}

function tooDeep(text: string, at: number, options: ParseOptions): Document.Parsed {
  const document = parseDocument('', options);
  const start = Math.min(at, Math.max(text.length - 1, 0));
  document.errors.push(new YAMLParseError([start, start + 1], 'RESOURCE_EXHAUSTION', 'nested too deep'));
  return document;
}

/** A node more levels down than may be; an alias is none, whatever it stands for. */
function nodeBelow(levels: number, root: unknown): Node | undefined {
  const waiting: { node: unknown; depth: number }[] = [{ node: root, depth: 0 }];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const { node, depth } = next;
    if (!isCollection(node)) continue;
    if (depth > levels) return node;
    for (const item of node.items) {
      const inside = isPair(item) ? [item.key, item.value] : [item];
      for (const each of inside) waiting.push({ node: each, depth: depth + 1 });
    }
  }
  return undefined;
}

/** Parses a text of one document. A second one is an error, unless there is nothing in it. */
export function parseYaml(
  text: string,
  options: ParseOptions & DocumentOptions & SchemaOptions = {},
): Document.Parsed {
  // At "silent" the parser passes over a second document without a word.
  const document = parsed(text, { ...options, logLevel: 'error' });
  // A word with ! before it is a tag to YAML, which drops it: what somebody wrote would be lost without a word.
  const tags = document.warnings.filter(({ code }) => code === 'TAG_RESOLVE_FAILED');
  document.errors.push(...tags.map(({ pos, code, message }) => new YAMLParseError(pos, code, message)));
  document.errors = document.errors.filter(
    ({ code, pos: [start] }) => code !== 'MULTIPLE_DOCS' || !NOTHING_MORE.test(text.slice(start)),
  );
  return document;
}
