import { readFile } from 'node:fs/promises';
import { join, parse } from 'node:path';
import type { Finding } from '../project/finding.ts';
import type { Picture, Project } from '../project/model.ts';
import { sha256, Unwritable } from './files.ts';
import { type PictureCache, remade } from './picture-cache.ts';
import { ENCODINGS, type Encoding, WIDTHS } from './picture-encodings.ts';

/** A picture of a project, made fit to be shown: turned upright, made small enough, every hidden datum left out. */
export type ProjectPicture = {
  /** As the sheet names it. */
  readonly path: string;
  readonly alternative: string;
  /** Every size and encoding of it, the widest of each last. */
  readonly renditions: readonly Rendition[];
};

export type Rendition = {
  readonly encoding: Encoding;
  /** Its name below the project's folder of the site; changes with its content. */
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array;
};

/** A photo of a camera is a tenth of this; more is a slip, or a trap. */
const MOST_BYTES = 60_000_000;

/** Reads and remakes every picture of a project; one that cannot be shown becomes a finding where it is named. */
export async function readPictures(
  folder: string,
  project: Project,
  cache: PictureCache,
): Promise<{ readonly pictures: readonly ProjectPicture[]; readonly findings: readonly Finding[] }> {
  const pictures: ProjectPicture[] = [];
  const findings: Finding[] = [];
  for (const picture of picturesOf(project)) {
    const { value: path, at } = picture.path;
    try {
      pictures.push(await remake(join(folder, path), picture, cache));
    } catch (error) {
      if (error instanceof Unwritable) throw error;
      findings.push({ rule: 'unreadable-picture', at, facts: { path, problem: reason(error) } });
    }
  }
  return { pictures, findings };
}

/** Each once, in the order of the sheet; those missing on disk have their finding already. */
function picturesOf(project: Project): readonly Picture[] {
  const all = [project.introduction, ...project.steps.map((step) => step.prose)].flatMap(
    (prose) => prose.pictures,
  );
  const missing = new Set(
    project.findings.flatMap((found) => (found.rule === 'missing-picture' ? [found.facts.path] : [])),
  );
  const there = all.filter(({ path }) => !missing.has(path.value));
  return [...new Map(there.map((picture) => [picture.path.value, picture])).values()];
}

async function remake(file: string, picture: Picture, cache: PictureCache): Promise<ProjectPicture> {
  const source = await readFile(file);
  if (source.length > MOST_BYTES) throw new Error('it is over 60 MB');
  const renditions: Rendition[] = [];
  for (const encoding of ENCODINGS) {
    for (const widest of WIDTHS) {
      const { bytes, width, height } = await remade(source, encoding, widest, cache);
      // A photo narrower than this is the same again.
      if (renditions.some((other) => other.encoding === encoding && other.width === width)) continue;
      renditions.push({ encoding, name: nameOf(file, bytes, width, encoding), width, height, bytes });
    }
  }
  return { path: picture.path.value, alternative: picture.alternative, renditions };
}

function nameOf(file: string, bytes: Uint8Array, width: number, { ending }: Encoding): string {
  const base = parse(file).name.replace(/[^\w-]+/gu, '-');
  return `${base}-${width}-${sha256(bytes).slice(0, 8)}.${ending}`;
}

function reason(error: unknown): string {
  const said = error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error);
  return said.replace(/^Input (?:buffer|file) /iu, 'it ').replace(/^VipsJpeg: /u, '');
}
