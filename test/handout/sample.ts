import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { PlacedPicture } from '../../src/drawing/placed-picture.ts';
import type { Editions } from '../../src/edition/editions.ts';
import { examine } from '../../src/examine/examine.ts';
import { createRenderer, type Renderer } from '../../src/handout/render.ts';
import { type Setting, settingOf, type Target } from '../../src/handout/setting.ts';
import { sheetHtml as htmlOf } from '../../src/handout/sheet.ts';
import { labelsOf } from '../../src/make/languages.ts';
import { readLabels } from '../../src/make/package-files.ts';
import { NO_REVISIONS } from '../../src/project/ledger/ledger.ts';
import type { Project, Site } from '../../src/project/model.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import type { Labels } from '../../src/words/labels.ts';

type Templates = Parameters<typeof createRenderer>[0];
type SheetInput = Parameters<typeof htmlOf>[0];

const folder = fileURLToPath(new URL('../../templates/', import.meta.url));

function textsOf(path: string, ending: string): ReadonlyMap<string, string> {
  const names = readdirSync(`${folder}${path}`).filter((name) => name.endsWith(ending));
  return new Map(
    names.map((name) => [name.slice(0, -ending.length), readFileSync(`${folder}${path}/${name}`, 'utf8')]),
  );
}

/** The program's own templates and words. */
export const templates: Templates = { pages: textsOf('', '.hbs'), partials: textsOf('partials', '.hbs') };
export const styles: ReadonlyMap<string, string> = textsOf('css', '.css');
export const renderer: Renderer = createRenderer(templates);
const ALL_LABELS = readLabels();
export const labels: Labels = ALL_LABELS.get('en') ?? { language: 'en', texts: new Map() };

export type Sample = { readonly project: Project; readonly site: Site; readonly editions: Editions };

/** A project of one `sheet.md`, and other files of its workspace. */
export function sample(sheet: string, files: Readonly<Record<string, string>> = {}): Sample {
  const workspace = readWorkspaceFromTexts({ 'sample/sheet.md': sheet, ...files });
  const [project] = workspace.projects;
  if (!project) throw new Error('the sample has no project');
  const [study] = examine(workspace, [project]);
  if (!study) throw new Error('the sample was not examined');
  return { project, site: workspace.site, editions: study.editions };
}

/** A project with these lines under `measurements:` and this body. */
export function sampleOf(measurements: string, body = '', rest = ''): Sample {
  const indented = measurements.trim().replace(/^/gmu, '  ');
  return sample(`---\ntitle: A sample\n${rest}measurements:\n${indented}\n---\n${body}\n`);
}

export function settingFor(
  { editions, project, site }: Sample,
  target: Target = 'letter',
  pictures: ReadonlyMap<string, PlacedPicture> = new Map(),
): Setting {
  return settingOf(editions, target, labelsOf(project, site, ALL_LABELS), pictures);
}

/** The whole document. */
export function sheetHtml(
  { editions, project, site }: Sample,
  target: Target,
  more: Partial<SheetInput> = {},
): string {
  return htmlOf({
    editions,
    site,
    labels: labelsOf(project, site, ALL_LABELS),
    renderer,
    target,
    pictures: new Map(),
    ledger: NO_REVISIONS,
    styles: { kind: 'inline', css: '' },
    scripts: [],
    links: { downloads: [] },
    ...more,
  });
}
