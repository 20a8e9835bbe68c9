import { realpath } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { isInside, putFiles, readIfThere, Unwritable } from '../make/files.ts';
import { pdfName } from '../make/papers.ts';
import type { Site } from '../project/model.ts';
import type { WorkspaceTexts } from '../project/workspace-texts.ts';
import { findKept, keptPath } from '../recall/kept.ts';
import type { Spot } from '../recall/recall.ts';

/**
 * Keeps the handouts and templates of a revision beside its record, as they were just made: the next revision leads back
 * to them, also when everything that was made is lost. What is kept already stays as it was handed out; what
 * a publish that was ended left out is added.
 * @throws Unwritable with a remedy, also as `checkKeepable` does.
 */
export async function keepPrints(
  { texts, out }: { readonly texts: WorkspaceTexts; readonly out: string },
  { folder, slug }: Spot,
  revision: number,
  site: Site,
): Promise<void> {
  const prints = site.paper.flatMap((paper) => [
    { path: keptPath({ revision, of: 'handout', paper }), made: `${slug}-${paper}.pdf` },
    { path: keptPath({ revision, of: 'template', paper }), made: pdfName(site, `${slug}-template`, paper) },
  ]);
  await checkKeepable(texts.root, folder, revision);
  const kept = new Set(findKept(texts, folder, revision).map(keptPath));
  const lacking = prints.filter(({ path }) => !kept.has(path));
  const files = await Promise.all(
    lacking.map(async ({ path, made }) => ({
      path,
      bytes: await readIfThere(join(out, 'site', slug, made)),
    })),
  );
  await putFiles(
    join(texts.root, folder),
    files.flatMap(({ path, bytes }) => (bytes ? [{ path, bytes }] : [])),
  );
}

/** @throws Unwritable where the folder for the prints of a revision is a link that leads out of the project's own. */
export async function checkKeepable(root: string, folder: string, revision: number): Promise<void> {
  const home = await realpath(join(root, folder));
  const prints = dirname(keptPath({ revision, of: 'handout', paper: 'a4' }));
  for (const path of [dirname(prints), prints]) {
    const real = await realpath(join(home, path)).catch(() => undefined);
    if (real === undefined || isInside(home, real)) continue;
    throw new Unwritable(
      `${folder}/${path} is a link that leads out of the project, so the handouts of revision ${revision} are not kept there: put a folder in its place`,
    );
  }
}
