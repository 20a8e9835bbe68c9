import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Trace } from '../recall/inputs.ts';
import { readOwn, seal, unseal, writeWhole } from '../recall/sealed.ts';
import { unwritable } from './files.ts';

/** One file that was made. `from` is what its bytes followed from, hashed; absent where making it is quick. */
export type FileRecord = { readonly from?: string | undefined; readonly sha256: string };

/** What one kind of output was made from, by the names of the inputs, and its files by their paths. */
type OutputRecord = {
  readonly uses: readonly string[];
  readonly files: Readonly<Record<string, FileRecord>>;
  /** The files are those of an earlier make: what is shown first was made without them. */
  readonly isDue?: true | undefined;
};

/** What was made of a project, or of the site as a whole: what each input was, and each output by its name. */
export type MadeRecord = {
  readonly inputs: Trace;
  readonly outputs: Readonly<Record<string, OutputRecord>>;
};

export type ProjectRecord = MadeRecord & {
  /** The sheet below the workspace's root, and its digest. */
  readonly source: string;
  readonly sha256: string;
  /** What the list shows, as data: a project with an error keeps its place and its last good sheet. */
  readonly card: unknown;
};

/** Whose a record is: what an earlier way to write them left, or another project, counts as nothing made. */
function whose(name: string): string {
  return `sheetwright make 2 ${name}`;
}

/**
 * The records of an output folder: one file a project in `.made/`, written as soon as it is made, so that a make that is
 * broken off need not do again what it did, and that folders made apart can be laid together. A damaged one counts as
 * nothing made.
 */
export class Records {
  readonly #out: string;
  /** Those of projects that were asked for or put, by slugs: read once. */
  readonly #known = new Map<string, { readonly record: ProjectRecord; readonly digest: string }>();

  /** @param out The output folder, absolute. */
  constructor(out: string) {
    this.#out = out;
  }

  /** The projects of which something was made. */
  get slugs(): readonly string[] {
    try {
      const names = readdirSync(join(this.#out, '.made', 'projects'));
      return names.flatMap((name) => (name.endsWith('.json') ? [name.slice(0, -'.json'.length)] : []));
    } catch {
      return [];
    }
  }

  /** Tells what was made of a project that was asked for; empty where nothing was. */
  digestOf(slug: string): string {
    return this.#known.get(slug)?.digest ?? '';
  }

  project(slug: string): ProjectRecord | undefined {
    const known = this.#known.get(slug);
    if (known) return known.record;
    const name = `projects/${slug}`;
    const text = this.#read(name);
    const record = madeRecordIn(text, name) as ProjectRecord | undefined;
    if (record) this.#know(slug, record, text);
    return record;
  }

  site(): MadeRecord | undefined {
    return madeRecordIn(this.#read('site'), 'site');
  }

  /** @throws Unwritable with a remedy, as the others do. */
  putProject(slug: string, record: ProjectRecord): void {
    this.#know(slug, record, this.#write(`projects/${slug}`, record));
  }

  putSite(record: MadeRecord): void {
    this.#write('site', record);
  }

  forgetProject(slug: string): void {
    this.#known.delete(slug);
    try {
      rmSync(this.#pathOf(`projects/${slug}`), { force: true });
    } catch (error) {
      throw unwritable(this.#out, error);
    }
  }

  #know(slug: string, record: ProjectRecord, text: string): void {
    this.#known.set(slug, { record, digest: text.slice(0, text.indexOf('\n')) });
  }

  #pathOf(name: string): string {
    return join(this.#out, '.made', `${name}.json`);
  }

  #read(name: string): string {
    try {
      return readOwn(this.#pathOf(name));
    } catch {
      return '';
    }
  }

  #write(name: string, record: MadeRecord): string {
    const text = seal(record, whose(name));
    try {
      writeWhole(this.#pathOf(name), text);
      return text;
    } catch (error) {
      throw unwritable(this.#out, error);
    }
  }
}

/** A record in the shape we write; by hand, since what reads shapes takes longer to load than a make that finds nothing to do. */
function madeRecordIn(text: string, name: string): MadeRecord | undefined {
  const record = unseal(text, whose(name));
  if (!isTable(record) || !isTable(record.inputs) || !isTable(record.outputs)) return undefined;
  const isWhole = Object.values(record.inputs).every(isText) && Object.values(record.outputs).every(isOutput);
  return isWhole ? (record as MadeRecord) : undefined;
}

function isOutput(output: unknown): boolean {
  if (!isTable(output) || !Array.isArray(output.uses) || !isTable(output.files)) return false;
  const isFile = (file: unknown): boolean => isTable(file) && isText(file.sha256);
  return (
    output.uses.every(isText) &&
    (output.isDue === undefined || output.isDue === true) &&
    Object.entries(output.files).every(([path, file]) => isPath(path) && isFile(file))
  );
}

/** Below the output folder, where a reader or the host looks. */
function isPath(path: string): boolean {
  return /^(?:site|host)\//u.test(path) && !/\0|\\|(?:^|\/)\.\.?(?:\/|$)/u.test(path);
}

function isTable(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isText(value: unknown): value is string {
  return typeof value === 'string';
}

/** Every file of a record, by its path. */
export function filesIn(record: MadeRecord | undefined): Readonly<Record<string, FileRecord>> {
  return Object.assign({}, ...Object.values(record?.outputs ?? {}).map(({ files }) => files));
}

export type MadeOutput = readonly [name: string, output: OutputRecord];

/** The outputs that are printed, or would be if PDFs were made. */
export function printedIn({ outputs }: MadeRecord): readonly MadeOutput[] {
  return Object.entries(outputs).filter(([, { uses }]) => uses.includes('pdf'));
}

/** The digests of the photos that something was made of. */
export function photosIn({ inputs }: ProjectRecord): readonly string[] {
  return Object.entries(inputs).flatMap(([name, digest]) => (name.startsWith('photo ') ? [digest] : []));
}
