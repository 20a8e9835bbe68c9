import { readFile } from 'node:fs/promises';
import { join, parse } from 'node:path';
import sharp from 'sharp';
import type { Picture, Project } from '../project/model.ts';
import type { Finding } from '../proof/finding.ts';
import { sha256 } from './output.ts';

/** A picture of a project, made fit to be shown: turned upright, made small enough, every hidden datum left out. */
export type ProjectPicture = {
  /** As the sheet names it. */
  readonly path: string;
  readonly alternative: string;
  /** Its name below the project's folder of the site; changes with its content. */
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array;
  readonly mediaType: 'image/jpeg' | 'image/png';
};

/** Wide enough for a desk screen and, at the width of a page, for 250 dots an inch. */
const WIDEST = 1600;
/** More pixels than any camera takes is a trap laid for the program's memory. */
const MOST_PIXELS = 120_000_000;

/** Reads and remakes every picture of a project; one that cannot be read becomes a finding. */
export async function readPictures(
  folder: string,
  project: Project,
): Promise<{ pictures: ProjectPicture[]; findings: Finding[] }> {
  const pictures: ProjectPicture[] = [];
  const findings: Finding[] = [];
  const seen = new Set<string>();
  for (const picture of picturesOf(project)) {
    if (seen.has(picture.path.value)) continue;
    seen.add(picture.path.value);
    const path = join(folder, picture.path.value);
    try {
      pictures.push(await remake(path, picture));
    } catch (error) {
      findings.push({
        rule: 'unreadable-picture',
        severity: 'error',
        message: `${picture.path.value} cannot be read as a picture (${reason(error)})`,
        remedy: 'save it again as a JPEG or PNG of ordinary size',
        at: picture.path.at,
        notes: [],
      });
    }
  }
  return { pictures, findings };
}

function picturesOf(project: Project): Picture[] {
  return [project.introduction, ...project.steps.map((step) => step.prose)].flatMap((prose) => [
    ...prose.pictures,
  ]);
}

async function remake(path: string, picture: Picture): Promise<ProjectPicture> {
  const source = await readFile(path);
  const image = sharp(source, { limitInputPixels: MOST_PIXELS, failOn: 'error' });
  const { format, hasAlpha } = await image.metadata();
  if (format === 'svg') throw new Error('drawings in SVG can carry scripts; use a JPEG or PNG');
  const shown = image
    .rotate()
    .resize({ width: WIDEST, height: WIDEST, fit: 'inside', withoutEnlargement: true });
  const keepsEdges = format === 'png' || hasAlpha;
  const { data, info } = await (keepsEdges
    ? shown.png()
    : shown.jpeg({ quality: 82, mozjpeg: true })
  ).toBuffer({
    resolveWithObject: true,
  });
  const ending = keepsEdges ? 'png' : 'jpg';
  return {
    path: picture.path.value,
    alternative: picture.alternative,
    name: `${parse(path).name.replace(/[^\w-]+/gu, '-')}-${sha256(data).slice(0, 8)}.${ending}`,
    width: info.width,
    height: info.height,
    bytes: data,
    mediaType: keepsEdges ? 'image/png' : 'image/jpeg',
  };
}

function reason(error: unknown): string {
  return error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error);
}
