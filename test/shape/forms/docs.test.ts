import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { foldedDrawing } from '../../../src/drawing/folded.ts';
import { editionsOf } from '../../../src/edition/editions.ts';
import { examine, findingsOf } from '../../../src/examine/examine.ts';
import type { Project } from '../../../src/project/model.ts';
import { mergeFindings } from '../../../src/proof/tell.ts';
import { buildShapes } from '../../../src/shape/build.ts';
import { forms } from '../../../src/shape/forms/index.ts';
import type { Shapes } from '../../../src/shape/shapes.ts';
import { sheetsOf } from '../../../src/shape/sheets.ts';
import { readWorkspaceFromTexts } from '../../../src/shape/workspace.ts';
import { inchStyle } from '../../drawing/drawn.ts';
import { beginPage, slugOf } from './form-page.ts';
import { pageDrawing } from './page-drawing.ts';

const folder = fileURLToPath(new URL('../../../docs/forms/', import.meta.url));

/** Writes the pictures anew instead of comparing them, and those of a new form: `UPDATE=1 npx vitest run test/shape/forms/docs.test.ts`. */
const update = (path: string): boolean =>
  process.env.UPDATE === '1' || (!process.env.CI && !existsSync(path));

for (const form of forms) beginPage(folder, form);

const slugs = forms.map(slugOf);

it('lists every form with its summary', () => {
  const list = readFileSync(`${folder}README.md`, 'utf8');
  for (const { name, summary } of forms) {
    expect(list).toContain(`| [${name}](${name.replace(/ /gu, '-')}.md) | ${summary} |`);
  }
});

/** The folded shape as sheets show it, on white, to stand alone. Made anew with the others; its look is the sheets' own. */
function foldedPicture(project: Project, shapes: Shapes, piece: string): string {
  const room = { width: 70, height: 70 };
  const drawing = foldedDrawing(editionsOf({ project, shapes }), piece, 'folded', room, inchStyle);
  if (!drawing) throw new Error(`${piece} cannot be drawn folded`);
  const [, x, y] = /viewBox="(\S+) (\S+)/u.exec(drawing.svg) ?? [];
  return `${drawing.svg.replace('>', `><rect x="${x}" y="${y}" width="100%" height="100%" fill="#fff"/>`)}\n`;
}

describe.each(forms.map((form) => [form.name, form] as const))('the page of the %s', (name, form) => {
  const path = `${folder}${name.replace(/ /gu, '-')}`;
  const page = existsSync(`${path}.md`) ? readFileSync(`${path}.md`, 'utf8') : '';
  const [, example = ''] = /^````markdown\n([\s\S]*?)^````$/mu.exec(page) ?? [];
  const workspace = readWorkspaceFromTexts({ 'example/sheet.md': example });
  const [project] = workspace.projects;

  it('says every measurement in the form’s own words, and no other', () => {
    const rows = [...page.matchAll(/^\| `(.+)` \| (.+) \|$/gmu)].map(([, key, says]) => `${key}: ${says}`);
    expect(rows).toEqual(form.parameters.map(({ key, says }) => `${key}: ${says}`));
  });

  it('names the panels that layers go on', () => {
    expect(page).toContain(`Layers go on: ${form.panels.map((panel) => `\`${panel}\``).join(', ')}.`);
  });

  it('has an example that proofs clean', () => {
    expect(project?.pieces.size).toBeGreaterThan(0);
    const findings = mergeFindings(findingsOf(workspace, examine(workspace)));
    expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });

  it('shows the sheets of its example as they are', () => {
    const piece = [...(project?.pieces.values() ?? [])].find(({ body }) => body.kind === 'form');
    if (!project || !piece) throw new Error(`${name} has no example`);
    const shapes = buildShapes(project);
    const folded = foldedPicture(project, shapes, piece.id.value);
    if (update(`${path}-folded.svg`)) writeFileSync(`${path}-folded.svg`, folded);
    expect(folded).not.toMatch(/NaN|undefined/u);
    const nets = sheetsOf(shapes.nets, piece.id.value).map(({ net }) => net);
    const drawing = pageDrawing(name, nets);
    if (update(`${path}.svg`)) writeFileSync(`${path}.svg`, drawing);
    expect(drawing).not.toMatch(/NaN|undefined/u);
    expect(readFileSync(`${path}.svg`, 'utf8')).toBe(drawing);
  });
});

it('shows a contributor a form as it stands', () => {
  const guide = readFileSync(`${folder}../adding-a-form.md`, 'utf8');
  const source = readFileSync(`${folder}../../src/shape/forms/single-fold-card.ts`, 'utf8');
  expect(guide).toContain(`\`\`\`ts\n${source}\`\`\``);
});

it('has a page and a picture for each form and for nothing else', () => {
  const pages = readdirSync(folder).filter((file) => file !== 'README.md');
  const wanted = slugs.flatMap((slug) => [`${slug}.md`, `${slug}.svg`, `${slug}-folded.svg`]);
  expect(pages.toSorted()).toEqual(wanted.toSorted());
});
