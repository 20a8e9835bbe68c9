import type { Units } from '../../measure/ruler-unit.ts';
import type { Finding } from '../finding.ts';
import { type SheetParts, splitSheet } from '../frontmatter.ts';
import { type Schema, sectionOf } from '../grammar/grammar.ts';
import { listed, needed, optional, section } from '../grammar/keys.ts';
import { asMeant } from '../grammar/misspelled.ts';
import type { ReadDrawing } from '../grammar/outline-grammar.ts';
import { readValue } from '../grammar/read-value.ts';
import { type Catalog, type Reader, refuse, type Shared } from '../grammar/reader.ts';
import { asDate, asLanguage, asMinutes, asPrintedLink, asText, asUnits } from '../grammar/values.ts';
import type { SettledNumbers } from '../ledger/ledger.ts';
import { readLedger } from '../ledger/read-ledger.ts';
import type { Project } from '../model.ts';
import { restoreText } from '../prose/directives.ts';
import { parseWithin } from '../prose/markdown.ts';
import { checkPictures, type FindPicture } from '../prose/pictures.ts';
import { makeSafe } from '../prose/safe-content.ts';
import { readSteps } from '../prose/steps.ts';
import { slugOf } from '../slug.ts';
import { digestOf, type Place, type SourceFile, startOf } from '../source.ts';
import { readYaml } from '../yaml/yaml-tree.ts';
import { checkNames } from './check-names.ts';
import { asMeasurements } from './read-measurements.ts';
import { MEETING } from './read-meeting.ts';
import { asSupply } from './read-supplies.ts';
import { versionsOf } from './read-variants.ts';
import { VARIANTS } from './variants.ts';

const HEAD = 'keys with a colon and a space behind each, such as title: Seed keeper';

const SHEET = sectionOf(HEAD, {
  title: needed(optional(asText, "The project's name.")),
  summary: optional(asText, 'One sentence, for the list of projects and for link previews.'),
  session: optional(asDate, 'The day it is made together, as year-month-day: `2026-12-10`.'),
  level: optional(asText, 'A word of yours, such as `beginner`. People can pick projects by it.'),
  minutes: optional(asMinutes, 'How long the whole thing takes, in minutes; or in hours: `1h30`.'),
  tags: listed(asText, 'A list in square brackets: `[card, layers]`.'),
  occasion: optional(asText, 'What it is for: `thank you`, `spring`.'),
  video: optional(asPrintedLink, 'A web address where it is shown being made: `https://` and so on.'),
  lang: optional(asLanguage, 'The language of this sheet, if it is not that of the site.'),
  ...MEETING,
  was: listed(asText, "Earlier names of the project's folder: their addresses then lead to the new one."),
  units: optional(asUnits, 'The editions made of it, if not those of the site: `both`, `inch` or `metric`.'),
  measurements: needed(section(asMeasurements, 'The measurement block.')),
  supplies: listed(asSupply, 'Tools and materials besides paper.'),
  variants: VARIANTS,
});

export const SHEET_SCHEMA: Schema = SHEET.schema;

/** A sheet to read, and what it may refer to. */
type SheetRequest = Pick<Reader, 'moneyDecimals' | 'shared' | keyof Catalog> & {
  /** The folder's name under the workspace's root. */
  readonly folder: string;
  readonly file: SourceFile;
  readonly ledger: SourceFile | undefined;
  /** What another project has published of a shared piece. */
  readonly publishedFirst: (use: string) => readonly SettledNumbers[];
  readonly findPicture: FindPicture;
  readonly readDrawing: ReadDrawing;
  /** Why the file could not be read as text, when it could not; its text is then empty. */
  readonly unreadable: readonly Finding[];
  /** The same of the ledger, which then counts as none. */
  readonly unreadableLedger: readonly Finding[];
  /** The editions that are made where the sheet says nothing of it. */
  readonly units: Units;
  /** Tells apart the settings and shared files it is read with. */
  readonly basis: string;
  /** What is looked at while it is read, as `Project` has it. */
  readonly uses: ReadonlySet<string>;
};

/** What a sheet, its drawings and its ledger say, and what was found; pictures count as far as they are there or not. */
function contentOf(
  { basis, file, ledger }: SheetRequest,
  findings: readonly Finding[],
  drawings: readonly string[],
  taken: readonly SettledNumbers[],
): string {
  const found = findings.map(({ rule, at }) => `${rule} ${at.file.path} ${at.start}`);
  const numbers = taken.map(({ piece, kind, inch, metric }) =>
    [piece, kind, ...inch, '=', ...metric].join(' '),
  );
  return digestOf([basis, file.path, file.text, ledger?.text ?? '', ...drawings, ...found, ...numbers]);
}

/** What others have published of the shared pieces that a project has not, under the names they have here. */
function takenOver(
  { pieces, ledger }: Pick<Project, 'pieces' | 'ledger'>,
  variant: string | undefined,
  { publishedFirst }: SheetRequest,
): readonly SettledNumbers[] {
  const own = ledger.state?.settled ?? [];
  return [...pieces].flatMap(([piece, { use }]) => {
    const isPublished = own.some((each) => each.piece === piece && each.variant === variant);
    if (!use || isPublished) return [];
    return publishedFirst(use.value).map(({ kind, inch, metric }) => ({
      piece,
      variant,
      kind,
      inch,
      metric,
    }));
  });
}

/**
 * Reads one sheet. There always is a project, whatever the file holds; what could not be taken is in its findings. One
 * with variants is read once for each of them.
 */
export function readProject(request: SheetRequest): Project {
  const parts = splitSheet(request.file);
  const head = readHead(request, parts);
  const body = collectFindings(request, (reader) => readBody(parts.body, request, reader));
  const [first, ...others] = head.read.versions;
  return {
    ...readVersion(first, request, head, body),
    others: others.map((version) => readVersion(version, request, head, body)),
  };
}

/** What was read, and what was found in reading it. */
type WithFindings<T> = {
  readonly read: T;
  readonly found: readonly Finding[];
  /** Every drawing that was looked at, and what was in it. */
  readonly drawings: readonly string[];
};

function collectFindings<T>(request: SheetRequest, read: (reader: Reader) => T): WithFindings<T> {
  const { file, shared, moneyDecimals, forms, outlines, readDrawing } = request;
  const found: Finding[] = [];
  const report: Reader['report'] = (finding, usedAt) =>
    found.push(sharedFinding(finding, shared) ?? foundIn(file, finding, usedAt));
  const drawings: string[] = [];
  const drawing: Reader['drawing'] = (path) => {
    const drawn = readDrawing(path);
    drawings.push(path, JSON.stringify(drawn));
    return drawn;
  };
  const reader = { report, unit: 'in', moneyDecimals, forms, outlines, drawing, shared } as const;
  return { read: read(reader), found, drawings };
}

type Head = {
  readonly versions: ReturnType<typeof versionsOf>;
  readonly readable: boolean;
  /** Its first line, for what is missing in it. */
  readonly at: Place;
};

function readHead(request: SheetRequest, parts: SheetParts): WithFindings<Head> {
  const { file, unreadable } = request;
  return collectFindings(request, (reader) => {
    for (const finding of unreadable.length > 0 ? unreadable : parts.findings) reader.report(finding);
    const yaml = parts.yaml && readYaml(parts.yaml);
    for (const finding of yaml?.findings ?? []) reader.report(finding);
    const readable = yaml?.broken === false;
    const opening = Math.max(file.text.indexOf('---'), 0);
    const at = readable ? { file, start: opening, end: opening + 3 } : startOf(file);
    const isMap = yaml?.root.kind === 'map';
    if (readable && !isMap && yaml.root.kind !== 'nothing') refuse(yaml.root, 'the head', HEAD, reader);
    const root = isMap ? yaml.root : ({ kind: 'nothing', at } as const);
    return { versions: versionsOf(asMeant(root, SHEET), reader), readable, at };
  });
}

type Body = Pick<Project, 'body' | 'introduction' | 'steps' | 'ledger'>;

function readBody(markdown: string, request: SheetRequest, reader: Reader): Body {
  const { file } = request;
  const { report } = reader;
  const body = parseWithin(markdown, file, report);
  restoreText(body, file, report);
  makeSafe(body, file, report);
  checkPictures(body, file, request.findPicture, report);
  for (const finding of request.unreadableLedger) report(finding);
  const ledger = request.unreadableLedger.length > 0 ? undefined : request.ledger;
  return { body, ...readSteps(body, file, reader), ledger: readLedger(ledger, report) };
}

function readVersion(
  { variant, root }: Head['versions'][number],
  request: SheetRequest,
  { read: { readable, at }, found: before }: WithFindings<Head>,
  { read: body, found: after }: WithFindings<Body>,
): Project {
  const { folder, file } = request;
  const slug = slugOf(folder);
  const { read, found, drawings } = collectFindings(request, (reader) => {
    // Of a head that is broken or not there nothing is said to be missing.
    const headReader = readable ? reader : { ...reader, report: () => {} };
    const sheet = readValue(SHEET, root, { key: 'frontmatter', at }, headReader);
    if (!readable) return sheet;
    checkNames(sheet, body, reader);
    return sheet;
  });
  const { title, units, measurements, variants: _, ...head } = read;
  const findings = [...before, ...found, ...after];
  const pieces = measurements.block.pieces;
  const taken = takenOver({ pieces, ledger: body.ledger }, variant?.id.value, request);
  return {
    slug,
    folder,
    content: contentOf(request, findings, drawings, taken),
    file,
    uses: request.uses,
    ...(variant && { variant }),
    others: [],
    title: title ?? { value: slug, at },
    units: units?.value ?? request.units,
    ...head,
    ...measurements.block,
    ...body,
    takenOver: taken,
    readable,
    findings,
  };
}

/** What a shared value is wrong in only as this sheet uses it, said where the sheet does. */
function foundIn(sheet: SourceFile, finding: Finding, usedAt: Place | undefined): Finding {
  if (!usedAt || finding.at.file === sheet) return finding;
  return { ...finding, at: usedAt, shared: finding.at };
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
