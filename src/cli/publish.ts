import { examine } from '../examine/examine.ts';
import { projectsNamed } from '../make/named.ts';
import type { Site } from '../project/model.ts';
import { publish } from '../publish/publish.ts';
import { type Published, tellPublished, unpublished } from '../publish/revisions.ts';
import { loadWorkspace } from '../shape/workspace.ts';
import { type MakingOptions, makeOptionsOf, tellMade } from './make.ts';
import { type CommandRun, count } from './terminal.ts';

type PublishOptions = MakingOptions & { readonly dryRun?: boolean };

/** `sheetwright publish [workspace]` */
export const run: CommandRun<PublishOptions> = async ([named], options, terminal) => {
  const making = await makeOptionsOf(named, options, terminal);
  if (options.dryRun) {
    const workspace = await loadWorkspace(making.root, { namedFrom: terminal.cwd });
    const projects = projectsNamed(options.only, workspace.projects);
    const would = unpublished(examine(workspace, projects), making.today);
    terminal.stdout.write(revisionsText(would, workspace.site, 'would be recorded'));
    return 0;
  }
  const result = await publish(making);
  const code = tellMade(result, options, terminal);
  if (!options.quiet) {
    terminal.stdout.write(revisionsText(result.published, (await result.recall.commons()).site, 'recorded'));
  }
  return code;
};

function revisionsText(published: readonly Published[], site: Site, how: string): string {
  if (published.length === 0) return 'nothing has changed since the last revision: none recorded\n';
  const projects = published.map((each) => {
    const { changes, recut } = tellPublished(each, site);
    const said = changes.length > 0 ? changes : ['first published'];
    const again = recut.length > 0 ? [`to cut again: ${recut.join(', ')}`] : [];
    return [
      `${each.project.slug}, revision ${each.revision.number}:`,
      ...[...said, ...again].map((line) => `  ${line}`),
    ].join('\n');
  });
  return `${projects.join('\n')}\n${count(published.length, 'revision')} ${how}\n`;
}
