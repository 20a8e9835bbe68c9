import { readFile } from 'node:fs/promises';
import { join, parse } from 'node:path';
import type { PlacedPicture } from '../drawing/placed-picture.ts';
import type { Finding } from '../project/finding.ts';
import type { Picture, Project } from '../project/model.ts';
import { sha256 } from '../recall/sealed.ts';
import { dataAddress, Unwritable } from './files.ts';
import type { Painter } from './painter.ts';
import { ENCODINGS, type MadePicture, remade, WIDTHS } from './picture-cache.ts';

/** A picture of a project, made fit to be shown: turned upright, made small enough, every hidden datum left out. */
export type ProjectPicture = {
  /** As the sheet names it. */
  readonly path: string;
  readonly alternative: string;
  /** Every size and encoding of it, the widest of each last. */
  readonly renditions: readonly Rendition[];
};

/** Its name is below the project's folder of the site; it changes with its content. */
type Rendition = MadePicture & { readonly name: string };

/** A photo of a camera is a tenth of this; more is a slip, or a trap. */
const MOST_BYTES = 60_000_000;

/** Reads and remakes every picture of a project; one that cannot be shown becomes a finding where it is named. */
export async function readPictures(
  folder: string,
  project: Project,
  cache: string,
  painter: Pick<Painter, 'encodePhoto'>,
): Promise<{ readonly pictures: readonly ProjectPicture[]; readonly findings: readonly Finding[] }> {
  const pictures: ProjectPicture[] = [];
  const findings: Finding[] = [];
  for (const picture of picturesOf(project)) {
    const { value: path, at } = picture.path;
    try {
      pictures.push(await remake(join(folder, path), picture, cache, painter));
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

async function remake(
  file: string,
  picture: Picture,
  cache: string,
  painter: Pick<Painter, 'encodePhoto'>,
): Promise<ProjectPicture> {
  const source = await readFile(file);
  if (source.length > MOST_BYTES) throw new Error('it is over 60 MB');
  const sizes: (readonly MadePicture[])[] = [];
  for (const widest of WIDTHS) {
    const made = await remade(source, widest, cache, painter);
    // A photo narrower than this is the same again.
    if (made[0]?.width !== sizes.at(-1)?.[0]?.width) sizes.push(made);
  }
  const all = ENCODINGS.flatMap((encoding) => sizes.flat().filter((made) => made.encoding === encoding));
  const renditions = all.map((made) => ({ ...made, name: nameOf(file, made) }));
  return { path: picture.path.value, alternative: picture.alternative, renditions };
}

function nameOf(file: string, { bytes, width, encoding: { ending } }: MadePicture): string {
  const base = parse(file).name.replace(/[^\w-]+/gu, '-');
  return `${base}-${width}-${sha256(bytes).slice(0, 8)}.${ending}`;
}

const REFUSED: Readonly<Partial<Record<string, string>>> = {
  ENOENT: 'it is no longer there',
  EACCES: 'you are not allowed to read it',
  EISDIR: 'it is a folder',
};

/** What the picture library says of a damaged file, in words of its own parts, or that it knows nothing of it. */
const DAMAGED = /^(?:Input (?:buffer|file) has corrupt header|\w+: |Unknown error|Warning treated as error)/u;

function reason(error: unknown): string {
  const refused = error instanceof Error && 'code' in error && REFUSED[String(error.code)];
  if (refused) return refused;
  const said = error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error);
  return DAMAGED.test(said) ? 'it is damaged' : said.replace(/^Input (?:buffer|file|image) /u, 'it ');
}

/** The pictures of a project as its page shows them: the browser chooses among sizes and encodings. */
export function picturesOnPage(pictures: readonly ProjectPicture[]): ReadonlyMap<string, PlacedPicture> {
  return new Map(
    pictures.map(({ path, renditions }) => {
      const { name, width, height } = plain(renditions);
      return [path, { src: name, width, height, sources: sourcesOf(renditions) }];
    }),
  );
}

/** As many pixels as a print of a photo needs: more than this to an inch nobody sees (common practice, no source). */
const PRINTED = 280;

/** The pictures as a print holds them. @param widest How wide it shows one at most, in millimeters. */
export function picturesInPrint(
  pictures: readonly ProjectPicture[],
  widest: number,
): ReadonlyMap<string, PlacedPicture> {
  return new Map(
    pictures.map(({ path, renditions }) => {
      const { encoding, width, height, bytes } = plain(renditions, (widest / 25.4) * PRINTED);
      return [path, { src: dataAddress(encoding.mediaType, bytes), width, height }];
    }),
  );
}

/** Of the encoding that everybody reads, the least that is so many pixels wide; else the widest. */
export function plain(
  renditions: readonly Rendition[],
  pixels: number = Number.POSITIVE_INFINITY,
): Rendition {
  const widest = renditions.at(-1);
  if (!widest) throw new Error('a picture without a rendition');
  const { ending } = widest.encoding;
  return renditions.find(({ encoding, width }) => encoding.ending === ending && width >= pixels) ?? widest;
}

function sourcesOf(renditions: readonly Rendition[]): NonNullable<PlacedPicture['sources']> {
  const encodings = [...new Set(renditions.map(({ encoding }) => encoding))];
  return encodings.map((encoding) => ({
    type: encoding.mediaType,
    srcset: renditions
      .filter((rendition) => rendition.encoding === encoding)
      .map(({ name, width }) => `${name} ${width}w`)
      .join(', '),
  }));
}
