import { examine, findingsOf } from '../examine/examine.ts';
import type { Study } from '../examine/study.ts';
import type { MakeOptions } from '../make/make-options.ts';
import { projectsNamed } from '../make/named.ts';
import type { Site } from '../project/model.ts';
import { printFindings } from '../proof/print.ts';
import { isStopped, mergeFindings } from '../proof/tell.ts';
import { isFailure } from '../proof/told.ts';
import { sayCount } from '../proof/words.ts';
import { checkRecordable, publish } from '../publish/publish.ts';
import { type Published, tellPublished, unpublished } from '../publish/revisions.ts';
import { loadWorkspace } from '../shape/workspace.ts';
import { type MakingOptions, makeOptionsOf, tellMade } from './make.ts';
import { type CommandRun, type ExitCode, inkFor, type Terminal } from './terminal.ts';

type PublishOptions = MakingOptions & { readonly dryRun?: boolean };

/** `sheetwright publish [workspace]` */
export const run: CommandRun<PublishOptions> = async ([named], options, terminal) => {
  const making = await makeOptionsOf(named, options, terminal);
  if (options.dryRun) return tellDryRun(making, options, terminal);
  const result = await publish(making);
  const code = tellMade(result, options, terminal);
  if (!options.quiet) {
    terminal.stdout.write(revisionsText(result.published, (await result.recall.commons()).site, 'recorded'));
  }
  for (const why of result.unkept) terminal.stderr.write(`sheetwright: ${why}\n`);
  return result.unkept.length > 0 ? 2 : code;
};

/** What publishing would find and record, and whether it would fail. */
async function tellDryRun(
  { root, only, today, pdf, strict = false }: MakeOptions,
  options: PublishOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const { stdout, cwd } = terminal;
  const workspace = await loadWorkspace(root, { namedFrom: cwd });
  const projects = projectsNamed(only, workspace.projects);
  const studies = examine(workspace, projects);
  const isHeld = (study: Study): boolean =>
    isStopped([...workspace.site.findings, ...study.findings], strict);
  const would = unpublished(
    studies.filter((study) => !isHeld(study)),
    today,
  );
  await checkRecordable(root, would, pdf);
  const findings = mergeFindings(findingsOf(workspace, studies));
  const ink = inkFor(terminal, options);
  stdout.write(printFindings(findings, { ink, projects, summary: !options.quiet }));
  stdout.write(revisionsText(would, workspace.site, 'would be recorded'));
  return isFailure(findings, strict) ? 1 : 0;
}

function revisionsText(published: readonly Published[], site: Site, how: string): string {
  if (published.length === 0) return 'nothing has changed since the last revision, so none was recorded\n';
  const projects = published.map((each) => {
    const { changes, recut } = tellPublished(each, site);
    const said = changes.length > 0 ? changes : ['first published'];
    const again = recut.length > 0 ? [`to cut again: ${recut.join(', ')}`] : [];
    return [
      `${each.project.slug}, revision ${each.revision.number}:`,
      ...[...said, ...again].map((line) => `  ${line}`),
    ].join('\n');
  });
  return `${projects.join('\n')}\n${sayCount(published.length, 'revision')} ${how}\n`;
}
