import { fileURLToPath } from 'node:url';
import { examine } from '../../src/examine/examine.ts';
import { openStudio, type ProjectMaterial } from '../../src/make/output.ts';
import { outputs as outputsByName } from '../../src/make/outputs/index.ts';
import { readPackageFiles } from '../../src/make/package-files.ts';
import { openPainter } from '../../src/make/painter.ts';
import { openPrinter, type Printer } from '../../src/print/printer.ts';
import type { Paper } from '../../src/project/model.ts';
import { loadWorkspace } from '../../src/shape/workspace.ts';
import { speaker } from '../../src/words/labels.ts';

const workspace = await loadWorkspace(fileURLToPath(new URL('../../projects', import.meta.url)));
const studies = examine(workspace);
const files = readPackageFiles();
const outputs = Object.values(outputsByName);
export const printer: Printer = openPrinter();
const painter = openPainter();

/** The demo's projects. */
export const slugs: readonly string[] = studies.map(({ project }) => project.slug);

/** What an output offers of a project: the keys of its labels, what they say, its addresses; and what it makes. */
type Offer = Readonly<Record<'keys' | 'labels' | 'listed' | 'offered' | 'made', readonly string[]>>;

/** A demo project, with what each output offers and the paths of what it makes. */
export function offersOf(
  slug: string,
  paper: readonly Paper[],
  { pdf = true }: { readonly pdf?: boolean } = {},
): readonly Offer[] {
  const study = studies.find(({ project }) => project.slug === slug);
  if (!study) throw new Error(`no project ${slug}`);
  const { project, editions } = study;
  const studio = openStudio({ ...workspace.site, paper }, files, { printer, painter }, { pdf });
  const own = { ...studio, slug, editions, ledger: project.ledger, pictures: [], source: '', kept: [] };
  const downloads = outputs.flatMap((output) => output.downloads?.(own) ?? []);
  const material: ProjectMaterial = { ...own, downloads };
  const say = speaker(studio.labels);
  return outputs.map(({ downloads: offered, ofProject }) => ({
    keys: (offered?.(own) ?? []).flatMap(({ label, listed }) => [label, ...Object.values(listed ?? {})]),
    labels: (offered?.(own) ?? []).map(({ label }) => say(label)),
    listed: (offered?.(own) ?? []).flatMap(({ listed }) =>
      listed ? [`${say(listed.line)}: ${say(listed.paper)}`] : [],
    ),
    offered: (offered?.(own) ?? []).map(({ href }) => `site/${slug}/${href}`),
    made: (ofProject?.(material) ?? []).map(({ path }) => path),
  }));
}
