import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { examine } from '../../src/examine/examine.ts';
import { Length } from '../../src/measure/length.ts';
import type { Piece, Project } from '../../src/project/model.ts';
import { tellFinding } from '../../src/proof/tell.ts';
import { stateOf } from '../../src/publish/state.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';

// A variant is a project written with its own values: the check from outside is the same value typed into the sheet.

const root = fileURLToPath(new URL('../../projects/', import.meta.url));
const read = (path: string): string => readFileSync(`${root}${path}`, 'utf8');
const shared = Object.fromEntries(
  readdirSync(`${root}shared`).map((file) => [`shared/${file}`, read(`shared/${file}`)]),
);
const slugs = readdirSync(root, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && !['shared', 'bulb-box'].includes(entry.name))
  .map(({ name }) => name);

function workspaceOf(sheet: string) {
  return readWorkspaceFromTexts({ 'site.yaml': read('site.yaml'), ...shared, 'a/sheet.md': sheet });
}

function projectOf(sheet: string): Project {
  const [project] = workspaceOf(sheet).projects;
  if (!project) throw new Error('no project');
  return project;
}

/** A value that is typed in the sheet itself: its path, where it stands, and another one for it. */
type Slip = { readonly path: string; readonly start: number; readonly end: number; readonly value: string };

function slipOf({ id, body }: Piece, { file, unit }: Project): Slip[] {
  const [key, at, sides] =
    body.kind === 'form'
      ? ([...body.settings].flatMap(([name, setting]) =>
          setting.kind === 'lengths' ? [[name, setting.at, setting.lengths.length] as const] : [],
        )[0] ?? [])
      : (['cut', body.cut.at, 2] as const);
  if (!key || !at || !sides || at.file !== file) return [];
  const value = (unit === 'in' ? ['2 1/8', '3 1/8', '4 5/8'] : ['61', '83', '117'])
    .slice(0, sides)
    .join(' x ');
  return [{ path: `${id.value}.${key}`, start: at.start, end: at.end, value }];
}

const withVariant = (sheet: string, { path, value }: Slip): string =>
  sheet.replace(/^measurements:/mu, `variants: { one: { ${path}: ${value} }, other: {} }\nmeasurements:`);
const written = (sheet: string, { start, end, value }: Slip): string =>
  sheet.slice(0, start) + value + sheet.slice(end);

/** Everything that is measured, without where it stands. */
function valuesOf({ unit, pieces, stock, holds }: Project): string {
  return JSON.stringify({ unit, pieces: [...pieces], stock: [...stock], holds }, (_, value: unknown) => {
    if (value instanceof Length || typeof value === 'bigint') return String(value);
    if (value instanceof Map) return [...value];
    const isPlace = typeof value === 'object' && value !== null && 'file' in value;
    return isPlace ? undefined : value;
  });
}

const slips = slugs.flatMap((slug) => {
  const sheet = read(`${slug}/sheet.md`);
  const project = projectOf(sheet);
  // One piece of each, the last: a band, a label, whatever lies on all the others.
  const slip = [...project.pieces.values()].flatMap((piece) => slipOf(piece, project)).at(-1);
  return slip ? [{ slug, sheet, slip, named: `${slug}: ${slip.path}` }] : [];
});

describe('a value of a variant is one written in the sheet', () => {
  it('in every project of the demo', () => {
    expect(slips.length).toBeGreaterThan(10);
    for (const { sheet, slip, named } of slips) {
      const variant = projectOf(withVariant(sheet, slip));
      const [other] = variant.others;
      expect([named, valuesOf(variant)]).toEqual([named, valuesOf(projectOf(written(sheet, slip)))]);
      expect([named, other && valuesOf(other)]).toEqual([named, valuesOf(projectOf(sheet))]);
    }
  });

  it.each(['three-layer-thank-you'])('in both editions and in what is found, in %s', (slug) => {
    const one = slips.find((each) => each.slug === slug);
    if (!one) throw new Error(`nothing to change in ${slug}`);
    const found = (sheet: string) => {
      const [study] = examine(workspaceOf(sheet));
      if (!study) throw new Error('no study');
      const messages = study.findings.map((each) => {
        const { message } = tellFinding(each);
        return message.replace(/^in the variant "one", /u, '');
      });
      const { own, printed, inch, metric } = study.editions;
      return {
        state: stateOf({ own, printed, inch, metric, settled: [], others: [] }),
        messages: messages.toSorted(),
      };
    };
    expect(found(withVariant(one.sheet, one.slip)).state).toEqual(found(written(one.sheet, one.slip)).state);
    const [ofVariant, ofSheet] = [withVariant, written].map(
      (make) => found(make(one.sheet, one.slip)).messages,
    );
    for (const message of ofSheet ?? []) expect(ofVariant).toContain(message);
  });
});
