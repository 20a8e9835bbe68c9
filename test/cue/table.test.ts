import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { firstUses } from '../../src/cue/taken-up.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';

const texts = Object.fromEntries(
  readdirSync('projects', { recursive: true, encoding: 'utf8' })
    .filter((path) => /(?:^|\/)(?:sheet\.md|[\w-]+\.yaml)$/u.test(path))
    .map((path) => [path, readFileSync(`projects/${path}`, 'utf8')]),
);
const { projects } = readWorkspaceFromTexts(texts);

const TAKES_UP = /:(?:piece|reveal|scores|trims|assembly|edge|impressions)\[\s*([\w-]+)/gu;

/** The pieces by the step that first takes them up, read from the bare text of a sheet. */
function piecesByStep(sheet: string): ReadonlyMap<string, number> {
  const body = sheet.replace(/^---\n[\s\S]*?\n---\n/u, '').replace(/^ *:::host[\s\S]*?^ *:::$/gmu, '');
  const [, ...steps] = body.split(/^## /mu);
  const first = new Map<string, number>();
  for (const [index, step] of steps.entries()) {
    for (const [, piece = ''] of step.matchAll(TAKES_UP)) {
      if (!first.has(piece)) first.set(piece, index + 1);
    }
  }
  return first;
}

describe('the table of every project of the demo', () => {
  it('has all of them', () => {
    expect(projects.length).toBeGreaterThanOrEqual(22);
  });

  it.each(projects.map((project) => [project.slug, project] as const))('%s', (slug, project) => {
    const uses = firstUses(project);
    const laid = uses.flatMap(({ step, pieces }) => pieces.map((piece) => [piece, step] as const));
    expect(laid).toEqual([...piecesByStep(texts[`${slug}/sheet.md`] ?? '')]);
    expect(laid.length).toBeGreaterThan(0);
    const supplies = uses.flatMap((use) => use.supplies);
    expect(new Set(supplies)).toEqual(new Set(project.supplies));
    expect(supplies).toHaveLength(project.supplies.length);
  });

  it('numbers stamps and inks by the step that stamps with them', () => {
    const card = projects.find(({ slug }) => slug === 'wheat-field-card');
    const stamped =
      card && firstUses(card).find(({ supplies }) => supplies.some(({ kind }) => kind.value === 'stamp'));
    const step = card?.steps[(stamped?.step ?? 0) - 1];
    expect(step?.prose.references.map(({ kind }) => kind)).toContain('impressions');
    expect(stamped?.supplies.map(({ kind }) => kind.value)).toEqual(expect.arrayContaining(['stamp', 'ink']));
  });

  it('keeps to the order its author gives', () => {
    const keeper = projects.find(({ slug }) => slug === 'seed-packet-keeper');
    const listed =
      keeper && firstUses(keeper).flatMap(({ supplies }) => supplies.map(({ item }) => item.value));
    expect(listed?.slice(0, 4)).toEqual([
      'Paper trimmer',
      'Score board',
      'Bone folder',
      'Small sharp scissors',
    ]);
  });
});
