import { shownEditions } from '../edition/editions.ts';
import { examine } from '../examine/examine.ts';
import { lengthFigures } from '../kit/report/figures.ts';
import { namesUsed, type Use, useOf } from '../kit/uses.ts';
import { printSize } from '../measure/print.ts';
import { nearestName } from '../project/nearest.ts';
import { sayCount } from '../proof/words.ts';
import { loadWorkspace } from '../shape/workspace.ts';
import { type CommandRun, type CommonOptions, Refusal } from './terminal.ts';
import { workspaceFolder } from './workspace-folder.ts';

type UsesOptions = CommonOptions & { readonly json?: boolean };

/** `sheetwright uses NAME [workspace]` */
export const run: CommandRun<UsesOptions> = async ([name = '', named], options, terminal) => {
  const root = workspaceFolder(named, terminal.cwd);
  const workspace = await loadWorkspace(root, { namedFrom: terminal.cwd });
  const uses = examine(workspace).flatMap(({ editions }) => {
    const { project, shapes } = editions[shownEditions(editions)[0]];
    return useOf(name, project, shapes) ?? [];
  });
  if (uses.length === 0) {
    const nearest = nearestName(name.trim(), workspace.projects.flatMap(namesUsed));
    const remedy =
      nearest === undefined
        ? 'name a stock, a supply, a set or a tag, or something of shared/, such as shared.moss'
        : `write "${nearest}"`;
    throw new Refusal(`nothing here uses "${name}": ${remedy}`);
  }
  terminal.stdout.write(options.json ? `${JSON.stringify(uses.map(jsonOf), null, 1)}\n` : textOf(name, uses));
  return 0;
};

function textOf(name: string, uses: readonly Use[]): string {
  const lines = uses.flatMap(({ project, pieces, supplies, isTagged }) => [
    project.session ? `${project.slug} (session ${project.session.value})` : project.slug,
    ...pieces.map(
      (piece) => `  ${piece.count} × ${piece.name}, ${printSize(piece.size, project.unit)} for each kit`,
    ),
    ...supplies.map(({ item, each }) => `  ${item}${each === undefined ? '' : `, ${each} for each kit`}`),
    ...(isTagged ? [`  tagged ${name}`] : []),
  ]);
  return [...lines, `${name}: ${sayCount(uses.length, 'project')}`, ''].join('\n');
}

function jsonOf({ project, pieces, supplies, isTagged }: Use): object {
  return {
    project: project.slug,
    session: project.session?.value ?? null,
    pieces: pieces.map(({ name, size: { width, height }, count: each }) => ({
      piece: name,
      width: lengthFigures(width),
      height: lengthFigures(height),
      count: each,
    })),
    supplies: supplies.map(({ item, each }) => ({ item, each: each ?? null })),
    tagged: isTagged,
  };
}
