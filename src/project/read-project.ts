import { Fields } from './fields.ts';
import type { Finding } from './finding.ts';
import { splitSheet } from './frontmatter.ts';
import { KNOWN_KEYS } from './known-keys.ts';
import type { FormGrammar, Project } from './model.ts';
import { present } from './optional.ts';
import type { FindPicture } from './pictures.ts';
import { readBody } from './read-body.ts';
import { readLedger } from './read-ledger.ts';
import { readMeasurements } from './read-measurements.ts';
import type { WrittenPiece } from './read-pieces.ts';
import type { Shared } from './read-shared.ts';
import { asSupply } from './read-supplies.ts';
import { type Reader, refuse } from './reader.ts';
import { checkReferences } from './references.ts';
import { sharedName } from './shared.ts';
import { type SourceFile, startOf } from './source.ts';
import { asCount, asDate, asLanguage, asText } from './values.ts';
import { readYaml, type YamlMap, type YamlNode } from './yaml-tree.ts';

/** A sheet to read, and what it may refer to. */
export type SheetRequest = {
  readonly slug: string;
  readonly folder: string;
  readonly file: SourceFile;
  readonly shared: Shared;
  readonly moneyDecimals: number;
  readonly forms: readonly FormGrammar[];
  readonly findPicture: FindPicture;
  /** `revisions.yaml` of the project, when it was ever published. */
  readonly ledger?: SourceFile | undefined;
  /** Why the file could not be read as text at all, when it could not. */
  readonly finding?: Finding;
};

/** Reads one sheet. There always is a project, whatever the file holds; what could not be taken is in its findings. */
export function readProject(request: SheetRequest): Project {
  const { slug, folder, file, shared, findPicture } = request;
  const findings: Finding[] = [];
  const report = (finding: Finding): void => {
    findings.push(sharedFinding(finding, shared) ?? finding);
  };
  const parts = splitSheet(file);
  for (const finding of request.finding ? [request.finding] : parts.findings) report(finding);
  const yaml = parts.yaml && readYaml(parts.yaml);
  yaml?.findings.forEach(report);
  const readable = yaml?.broken === false;
  const { head, written } = readHead(yaml?.root, readable, request, report);
  const body = readBody(parts.body, file, findPicture, report);
  if (readable) {
    const prose = [body.introduction, ...body.steps.map((step) => step.prose)];
    const sharedStock = [...shared.values.stock.keys()].map(sharedName);
    checkReferences({ names: head.names, sharedStock, pieces: written, prose }, report);
  }
  const ledger = readLedger(request.ledger, report);
  return { slug, folder, file, ...head, ...body, readable, ledger, findings };
}

type Head = Omit<
  Project,
  'slug' | 'folder' | 'file' | 'body' | 'introduction' | 'steps' | 'findings' | 'readable' | 'ledger'
>;

/** What the frontmatter says. Of one that is broken or not there nothing is said to be missing. */
function readHead(
  root: YamlNode | undefined,
  readable: boolean,
  { slug, file, shared, moneyDecimals, forms }: SheetRequest,
  report: (finding: Finding) => void,
): { readonly head: Head; readonly written: readonly WrittenPiece[] } {
  const opening = Math.max(file.text.indexOf('---'), 0);
  const parent = readable ? { file, start: opening, end: opening + 3 } : startOf(file);
  const unread: Reader = {
    report,
    unitIn: (source) => shared.units.get(source) ?? 'in',
    moneyDecimals,
    forms,
    shared: shared.values,
  };
  if (root && root.kind !== 'map' && root.kind !== 'nothing') {
    refuse(root, 'the head', 'keys with a colon and a blank behind each, such as title: Seed keeper', unread);
  }
  const map: YamlMap = root?.kind === 'map' ? root : { kind: 'map', entries: [], at: parent };
  const fields = new Fields(map, 'frontmatter', unread, parent, KNOWN_KEYS.sheet);
  const title = readable ? fields.require('title', asText) : undefined;
  if (readable) fields.expect('measurements');
  const { block, written, reader } = readMeasurements(fields, unread);
  const head = {
    title: title ?? { value: slug, at: parent },
    ...present('summary', fields.read('summary', asText)),
    ...present('session', fields.read('session', asDate)),
    ...present('level', fields.read('level', asText)),
    ...present('minutes', fields.read('minutes', asCount(1, 10_000))),
    tags: fields.list('tags', asText),
    ...present('occasion', fields.read('occasion', asText)),
    ...present('lang', fields.read('lang', asLanguage)),
    ...block,
    supplies: fields.list('supplies', (node, key) => asSupply(node, key, reader)),
  };
  return { head, written };
}

/** The very finding that reading the shared file found there, so that it is the same in every project that uses it. */
function sharedFinding(finding: Finding, shared: Shared): Finding | undefined {
  return shared.findings.find(
    ({ rule, at }) =>
      rule === finding.rule &&
      at.file === finding.at.file &&
      at.start === finding.at.start &&
      at.end === finding.at.end,
  );
}
