import type { Finding } from './finding.ts';
import type { Place, SourceFile } from './source.ts';

/** A stretch of YAML: a whole file of it, or the part between the two `---` of a sheet. */
export type YamlSource = { readonly file: SourceFile; readonly text: string; readonly offset: number };

/** A sheet in its two parts. `body` is as long as the whole file: what is frontmatter is blanked out. */
export type SheetParts = {
  readonly yaml: YamlSource | undefined;
  readonly body: string;
  readonly findings: readonly Finding[];
};

const OPENING = /^(?:[ \t]*(?:\r\n|\r|\n))*---[ \t]*(?:\r\n|\r|\n)/u;
const CLOSING = /^(?:---|\.\.\.)[ \t]*$/mu;

/** Splits a sheet into its frontmatter and its Markdown, both with the offsets of the whole file. */
export function splitSheet(file: SourceFile): SheetParts {
  const { text } = file;
  if (text.trim() === '')
    return without(file, { rule: 'empty-file', at: { file, start: 0, end: 0 }, facts: {} });
  const opening = OPENING.exec(text);
  if (!opening) return without(file, { rule: 'no-frontmatter', at: firstLine(file), facts: {} });
  const offset = opening[0].length;
  const closing = CLOSING.exec(text.slice(offset));
  if (!closing) {
    const problem = 'the block that begins with --- has no second --- to end it';
    const at = { file, start: opening[0].indexOf('---'), end: opening[0].indexOf('---') + 3 };
    return { ...without(file, { rule: 'broken-yaml', at, facts: { problem, isHead: true } }), body: '' };
  }
  const end = offset + closing.index;
  const bodyStart = end + closing[0].length;
  return {
    yaml: { file, text: text.slice(offset, end), offset },
    body: text.slice(0, bodyStart).replace(/[^\r\n]/g, ' ') + text.slice(bodyStart),
    findings: [],
  };
}

/** A whole YAML file as a source. */
export function wholeFile(file: SourceFile): YamlSource {
  return { file, text: file.text, offset: 0 };
}

/** Where a stretch of YAML stands in its file. The only place where the frontmatter's offset is added. */
export function placeInYaml({ file, offset }: YamlSource, start: number, end: number): Place {
  return { file, start: start + offset, end: end + offset };
}

function without(file: SourceFile, finding: Finding): SheetParts {
  return { yaml: undefined, body: file.text, findings: [finding] };
}

function firstLine(file: SourceFile): Place {
  const start = file.text.search(/\S/u);
  const length = file.text.slice(start).search(/[\r\n]|$/u);
  return { file, start, end: start + length };
}
