import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { examine } from '../../src/examine/examine.ts';
import type { Finding } from '../../src/project/finding.ts';
import { proofProject } from '../../src/proof/proof.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { forms } from '../../src/shape/forms/index.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { IS_LONG, runs } from '../runs.ts';
import { anySettings } from '../shape/forms/any.ts';
import { netsOf } from '../shape/forms/building.ts';
import { asScored } from './as-scored.ts';

/** For each form. */
const RUNS = runs(20_261_127, 4, 60);

/** What is said of the other edition of a box alone; undefined where the box is not clean as written. */
function ofOther(lines: string): string[] | undefined {
  const indented = lines.replace(/^/gmu, '      ');
  const sheet = `---\ntitle: Random\nmeasurements:\n  unit: in\n  stock: { card: { sheet: 36 in x 36 in, weight: 80 lb cover } }\n  pieces:\n    box:\n      stock: card\n${indented}\n---\n## Make it\nFold :piece[box].\n`;
  const workspace = readWorkspaceFromTexts({ 'random/sheet.md': sheet });
  const [project] = workspace.projects;
  if (!project || !isClean(proofProject(workspace, project, buildShapes(project)))) return undefined;
  return mergeFindings(examine(workspace).flatMap(({ findings }) => findings))
    .filter(
      ({ rule, message }) => rule === 'edition-strained' || /in the (?:metric|inch) edition/u.test(message),
    )
    .map(({ rule, message }) => `${rule}: ${message}`);
}

function isClean(findings: readonly Finding[]): boolean {
  return mergeFindings(findings).every(({ severity }) => severity === 'note');
}

/** Forms that are no grid of whole cells: they have curves, angles or holes. */
const NO_GRID: ReadonlySet<string> = new Set(['gable box', 'pillow box', 'polygon box', 'tag']);

/** A box scored between two grooves of the board does not proof clean, and so shows nothing: a long run alone tries some. */
const ON_GROOVES = IS_LONG ? 1 : 2;

const names = forms.map(({ name }) => name);

describe('any project that proofs clean as written is made in both editions', () => {
  it.each(names)('given as a %s', (name) => {
    fc.assert(
      fc.property(anySettings(1)[name] ?? fc.constant({}), (each) => {
        const lines = [`form: ${name}`, ...Object.entries(each).map(([key, text]) => `${key}: ${text}`)];
        const said = ofOther(lines.join('\n'));
        fc.pre(said !== undefined);
        expect(said).toEqual([]);
      }),
      RUNS,
    );
  });

  it.each(names.filter((name) => !NO_GRID.has(name)))('given by the score lines of a %s', (name) => {
    fc.assert(
      fc.property(anySettings(ON_GROOVES)[name] ?? fc.constant({}), (each) => {
        const scored = netsOf(name, { settings: each }).flatMap((net) => asScored(net) ?? []);
        fc.pre(scored.length > 0);
        for (const lines of scored) {
          const said = ofOther(lines);
          fc.pre(said !== undefined);
          expect(said).toEqual([]);
        }
      }),
      RUNS,
    );
  });
});
