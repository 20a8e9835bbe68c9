import { studyProjects } from '../edition/study.ts';
import { projectsNamed } from '../make/named.ts';
import type { Site } from '../project/model.ts';
import { isFailure } from '../proof/told.ts';
import { type Published, publish, tellPublished, unpublished } from '../publish/publish.ts';
import { loadWorkspace } from '../shape/workspace.ts';
import { count, type MakingOptions, makeOptionsOf, tellMade, today, withMakingOptions } from './making.ts';
import type { CommandHost } from './terminal.ts';

type PublishOptions = MakingOptions & { readonly dryRun?: boolean };

/** `sheetwright publish [workspace]` */
export function addPublish({ program, terminal, done }: CommandHost): void {
  const command = program
    .command('publish')
    .description('make, and record a new revision of each project whose measurements or steps changed');
  withMakingOptions(command)
    .option('--dry-run', 'print what would be recorded, make and record nothing')
    .action(async (named: string | undefined, options: PublishOptions) => {
      const making = makeOptionsOf(named, options, terminal);
      if (options.dryRun) {
        const workspace = await loadWorkspace(making.root, { namedFrom: terminal.cwd });
        const projects = projectsNamed(options.only, workspace.projects);
        const would = unpublished(await studyProjects(projects), today());
        terminal.stdout.write(revisionsText(would, workspace.site, 'would be recorded'));
        return;
      }
      const result = await publish(making);
      tellMade(result, options, terminal);
      if (!options.quiet)
        terminal.stdout.write(revisionsText(result.published, result.workspace.site, 'recorded'));
      done(isFailure(result.findings, options.strict === true) ? 1 : 0);
    });
}

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
