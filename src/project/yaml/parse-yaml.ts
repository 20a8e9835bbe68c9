import {
  type Document,
  type DocumentOptions,
  type ParseOptions,
  parseDocument,
  type SchemaOptions,
} from 'yaml';

/** What may stand behind the end of a document and still be no second one: lines of dashes or dots, and comments. */
const NOTHING_MORE = /^(?:(?:---|\.\.\.)?[ \t]*(?:#.*)?(?:\r\n?|\n|$))*$/u;

/** Parses a text of one document. A second one is an error, unless there is nothing in it. */
export function parseYaml(
  text: string,
  options: ParseOptions & DocumentOptions & SchemaOptions = {},
): Document.Parsed {
  // At "silent" the parser passes over a second document without a word.
  const document = parseDocument(text, { ...options, logLevel: 'error' });
  document.errors = document.errors.filter(
    ({ code, pos: [start] }) => code !== 'MULTIPLE_DOCS' || !NOTHING_MORE.test(text.slice(start)),
  );
  return document;
}
