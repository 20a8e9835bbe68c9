import { join } from 'node:path';
import type { Project } from '../project/model.ts';
import type { ListedProject } from '../site/listed.ts';
import { type OutputFile, putFiles, readIfThere, removeFiles, sha256, type Written } from './files.ts';
import type { Job } from './output.ts';
import { type FileRecord, type MakeRecord, RECORD_PATH, readRecord, recordText } from './record.ts';

type Files = Readonly<Record<string, FileRecord>>;

type Terms = {
  /** The output folder, absolute. */
  readonly out: string;
  /** Whose work it is: what another version made is made again. */
  readonly version: string;
  /** Make everything again, whatever was made before. */
  readonly all: boolean;
  /** Whether PDFs are made; else those of the last time stay where they are. */
  readonly pdf: boolean;
  /** Told before each file that is made. */
  readonly working: (path: string) => void;
};

/**
 * An output folder that a make is filling, project by project, then with the site's own pages. The files of each are
 * put in place together; what is no longer made is removed. The record follows every step, so that a make that is
 * broken off need not do again what it did.
 */
export class OutputFolder {
  /** What happened to each file that was looked at. */
  readonly written: Written[] = [];
  readonly #terms: Terms;
  #record: MakeRecord;

  private constructor(terms: Terms, record: MakeRecord) {
    this.#terms = terms;
    this.#record = record;
  }

  /** Opens it and removes the pages of projects that are gone. */
  static async open(terms: Terms, slugs: readonly string[]): Promise<OutputFolder> {
    const last = await readRecord(terms.out);
    const all = Object.entries(last.projects);
    const gone = all.filter(([slug]) => !slugs.includes(slug));
    await removeFiles(
      terms.out,
      gone.flatMap(([, { files }]) => Object.keys(files)),
    );
    const projects = Object.fromEntries(all.filter(([slug]) => slugs.includes(slug)));
    return new OutputFolder(terms, { sheetwright: terms.version, projects, site: last.site });
  }

  /** What the index shows: the projects made now, and those of the last time that are held. */
  get cards(): readonly ListedProject[] {
    return Object.values(this.#record.projects).map(({ card }) => card);
  }

  async putProject(
    { slug, folder, file }: Project,
    card: ListedProject,
    jobs: readonly Job[],
  ): Promise<void> {
    const { projects } = this.#record;
    const files = await this.#perform(jobs, projects[slug]?.files ?? {});
    const made = { source: `${folder}/sheet.md`, sha256: sha256(file.text), card, files };
    await this.#note({ ...this.#record, projects: inOrder({ ...projects, [slug]: made }) });
  }

  async putSite(jobs: readonly Job[]): Promise<void> {
    const site = await this.#perform(jobs, this.#record.site);
    this.written.push(...(await this.#note({ ...this.#record, site })));
  }

  async #note(record: MakeRecord): Promise<Written[]> {
    this.#record = record;
    return putFiles(this.#terms.out, [{ path: RECORD_PATH, bytes: recordText(record) }]);
  }

  async #perform(jobs: readonly Job[], before: Files): Promise<Files> {
    const { out, pdf } = this.#terms;
    const { files, made } = await this.#do(jobs, before);
    this.written.push(...(await putFiles(out, files)));
    const kept = Object.entries(before).filter(([path]) => !pdf && path.endsWith('.pdf'));
    const now: Files = { ...Object.fromEntries(kept), ...made };
    await removeFiles(
      out,
      Object.keys(before).filter((path) => !(path in now)),
    );
    return now;
  }

  /**
   * Does the jobs, skipping a slow one whose sources are what they were and whose file is still there untouched.
   * Nothing is written yet: if one job fails, nothing of the others has replaced anything.
   */
  async #do(jobs: readonly Job[], last: Files): Promise<{ files: readonly OutputFile[]; made: Files }> {
    const { out, version, all, working } = this.#terms;
    const files: OutputFile[] = [];
    const made: Record<string, FileRecord> = {};
    for (const { path, from: sources, produce } of jobs) {
      const from = sources === undefined ? undefined : sha256(`${version}\n${sources}`);
      const before = last[path];
      if (!all && from !== undefined && before?.from === from && (await isUntouched(out, path, before))) {
        made[path] = before;
        continue;
      }
      working(path);
      const bytes = await produce();
      files.push({ path, bytes });
      made[path] = { ...(from === undefined ? {} : { from }), sha256: sha256(bytes) };
    }
    return { files, made };
  }
}

async function isUntouched(out: string, path: string, before: FileRecord): Promise<boolean> {
  const bytes = await readIfThere(join(out, path));
  return bytes !== undefined && sha256(bytes) === before.sha256;
}

function inOrder(projects: MakeRecord['projects']): MakeRecord['projects'] {
  return Object.fromEntries(Object.entries(projects).sort(([a], [b]) => (a < b ? -1 : 1)));
}
