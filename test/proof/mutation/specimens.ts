import { fileURLToPath } from 'node:url';
import type { Project, Workspace } from '../../../src/project/model.ts';
import { writeName } from '../../../src/project/ref.ts';
import { buildShapes } from '../../../src/shape/build.ts';
import { forms } from '../../../src/shape/forms/index.ts';
import type { Net } from '../../../src/shape/net.ts';
import type { Shapes } from '../../../src/shape/shapes.ts';
import type { Sheet } from '../../../src/shape/sheets.ts';
import { loadWorkspace, readWorkspaceFromTexts } from '../../../src/shape/workspace.ts';
import { FOLDED_CORNERS, KEEPER, OPEN_TRAY, sheetOf, TRADE_FACT } from '../../shape/boxes.ts';

/** A right net, where it stands in a project. */
export type Specimen = {
  /** `seed-packet-keeper.box`, `slide box.sleeve`. */
  readonly name: string;
  /** The piece and the sheet of it that it is of. */
  readonly piece: string;
  readonly sheet: Sheet;
  readonly net: Net;
  readonly workspace: Workspace;
  readonly project: Project;
  readonly shapes: Shapes;
};

/** Boxes by their score lines, and forms made another way than their examples. */
const MORE: readonly (readonly [string, string])[] = [
  ['scored keeper', KEEPER],
  ['scored box', TRADE_FACT],
  ['scored tray', OPEN_TRAY],
  ['tray with folded-in corners', FOLDED_CORNERS],
  ['card folded above', '\n  form: single-fold card\n  size: 5 1/2 x 4 1/4\n  fold: top'],
  ['reverse tuck box', '\n  form: tuck-end box\n  inside: 2 x 1 x 3\n  ends: reverse'],
  ['band with sides', '\n  form: belly band\n  around: 4 1/4 x 1/2'],
  ['tray with short tabs', '\n  form: tray\n  inside: 4 x 3 x 1\n  tab: 1/2'],
];

/** Every folded net of the demo workspace, of every form's example, and of some more. */
export async function gatherSpecimens(): Promise<readonly Specimen[]> {
  const examples = forms.map(({ name, example }) => {
    const lines = [`form: ${name}`, ...example.settings].map((line) => `\n  ${line}`);
    return [name, lines.join('')] as const;
  });
  const written = [...MORE, ...examples].map(([name, box]) =>
    readWorkspaceFromTexts({ [`${name}/sheet.md`]: sheetOf(box) }),
  );
  const demo = await loadWorkspace(fileURLToPath(new URL('../../../projects', import.meta.url)));
  return withoutTwins([...written, demo].flatMap(foldedNets));
}

function foldedNets(workspace: Workspace): Specimen[] {
  return workspace.projects.flatMap((project) => {
    const shapes = buildShapes(project);
    const all = [...shapes.nets].flatMap(([piece, sheets]) => sheets.map((sheet) => ({ piece, sheet })));
    return all
      .filter(({ sheet }) => sheet.net.folds.length > 0)
      .map(({ piece, sheet }) => {
        const id = writeName({ piece, part: sheet.name });
        const name = `${project.folder}.${id}`.replace(/^(.* .*|tray|tag|envelope)\.box/u, '$1');
        const { strips, ...net } = sheet.net;
        return { name, piece, sheet, net, workspace, project, shapes };
      });
  });
}

/** Of nets that are the same to the last length and name, the first. */
function withoutTwins(all: readonly Specimen[]): readonly Specimen[] {
  const known = new Map<string, Specimen>();
  for (const each of all) {
    const { panels, folds, glue } = each.net;
    const key = JSON.stringify([
      panels.map(({ id, outline }) => [id, outline.map(({ x, y }) => `${x} ${y}`)]),
      folds.map(({ panels, direction, angle }) => [panels, direction, angle]),
      glue.map(({ from, to }) => [from, to]),
    ]);
    if (!known.has(key)) known.set(key, each);
  }
  return [...known.values()];
}
