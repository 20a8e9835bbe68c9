import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { examine } from '../../src/examine/examine.ts';
import { openStudio, type ProjectMaterial } from '../../src/make/output.ts';
import { outputs } from '../../src/make/outputs/index.ts';
import { readPackageFiles } from '../../src/make/package-files.ts';
import { openPrinter } from '../../src/print/printer.ts';
import type { Paper } from '../../src/project/model.ts';
import { loadWorkspace } from '../../src/shape/workspace.ts';
import { speaker } from '../../src/words/labels.ts';

const workspace = await loadWorkspace(fileURLToPath(new URL('../../projects', import.meta.url)));
const studies = examine(workspace);
const files = readPackageFiles();
const printer = openPrinter();
afterAll(() => printer.close());

/** A demo project, with what each output offers and the paths of what it makes. */
function offersOf(slug: string, paper: readonly Paper[], { pdf = true } = {}) {
  const study = studies.find(({ project }) => project.slug === slug);
  if (!study) throw new Error(`no project ${slug}`);
  const { project, editions } = study;
  const studio = openStudio({ ...workspace.site, paper }, files, printer, { pdf });
  const own = { ...studio, slug, editions, ledger: project.ledger, pictures: [] };
  const downloads = outputs.flatMap((output) => output.downloads?.(own) ?? []);
  const material: ProjectMaterial = { ...own, downloads };
  const say = speaker(studio.labels);
  return outputs.map(({ downloads: offered, ofProject }) => ({
    labels: (offered?.(own) ?? []).map(({ label }) => say(label)),
    listed: (offered?.(own) ?? []).flatMap(({ listed }) =>
      listed ? [`${say(listed.line)}: ${say(listed.paper)}`] : [],
    ),
    offered: (offered?.(own) ?? []).map(({ href }) => `site/${slug}/${href}`),
    made: (ofProject?.(material) ?? []).map(({ path }) => path),
  }));
}

describe('what a page leads to', () => {
  it.each(studies.map(({ project }) => project.slug))('is made, for %s', (slug) => {
    const offers = offersOf(slug, ['letter', 'a4']);
    expect(offers.flatMap(({ offered }) => offered).length).toBeGreaterThanOrEqual(3);
    for (const { offered, made } of offers) expect(made).toEqual(expect.arrayContaining([...offered]));
  });

  it('is named with its paper where there are several, on the page and in lists', () => {
    const offers = offersOf('short-pencil-box', ['letter', 'a4']);
    const papers = offers.filter(({ listed }) => listed.length > 0);
    expect(papers.flatMap(({ labels }) => labels)).toEqual([
      'PDF, Letter',
      'PDF, A4',
      'PDF, large print',
      'Template, Letter',
      'Template, A4',
    ]);
    expect(papers.flatMap(({ listed }) => listed)).toEqual([
      'Handout: Letter',
      'Handout: A4',
      'Handout: Large print',
      'Template: Letter',
      'Template: A4',
    ]);
  });

  it('is a template without a paper where there is one paper alone', () => {
    const offers = offersOf('short-pencil-box', ['a4']);
    expect(offers.flatMap(({ labels }) => labels)).toContain('Actual-size template');
    expect(offers.flatMap(({ listed }) => listed).at(-1)).toBe('Template: PDF');
  });

  it('is no PDF where none is made', () => {
    const offers = offersOf('short-pencil-box', ['letter', 'a4'], { pdf: false });
    expect(offers.flatMap(({ offered }) => offered).filter((path) => path.endsWith('.pdf'))).toEqual([]);
  });
});
