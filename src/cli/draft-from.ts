import { existsSync } from 'node:fs';
import { cp, mkdir, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { examine } from '../examine/examine.ts';
import type { Study } from '../examine/study.ts';
import { planKit } from '../kit/kit.ts';
import { titleOf } from '../make/draft.ts';
import { projectsNamed } from '../make/named.ts';
import { tellChange } from '../make/redraft/edits.ts';
import { type Order, type Redrafted, redraft } from '../make/redraft/redraft.ts';
import type { Wish } from '../make/redraft/room.ts';
import { Length, type Unit } from '../measure/length.ts';
import { LONGEST, parseSizes } from '../measure/notation.ts';
import { LEDGER_FILE } from '../project/ledger/ledger.ts';
import type { Project, Workspace } from '../project/model.ts';
import { printFindings } from '../proof/print.ts';
import { mergeFindings } from '../proof/tell.ts';
import { isFailure } from '../proof/told.ts';
import { sayCount } from '../proof/words.ts';
import { loadHighs } from '../shape/highs.ts';
import { loadWorkspace } from '../shape/workspace.ts';
import { type CommonOptions, type ExitCode, inkFor, Refusal, type Terminal } from './terminal.ts';
import { commandFor, workspaceFolder } from './workspace-folder.ts';

/** What `draft --from` takes, as it was typed. */
export type DraftFromOptions = CommonOptions & {
  readonly from: string;
  readonly holds?: string;
  readonly count?: string;
  readonly name?: string;
  readonly variant?: string;
};

/** Makes a project of another one, so that its box holds something else; and says what became of it. */
export async function draftFrom(
  slug: string,
  named: string | undefined,
  options: DraftFromOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const { cwd, stdout } = terminal;
  const root = workspaceFolder(named, cwd);
  const folder = join(root, slug);
  const shown = relative(cwd, join(folder, 'sheet.md'));
  if (existsSync(folder)) throw new Refusal(`${relative(cwd, folder)} is there already: choose another name`);
  const workspace = await loadWorkspace(root, { namedFrom: cwd });
  const project = sourceIn(workspace, options.from, named);
  const { variant, name: title = titleOf(slug) } = options;
  const order: Order = {
    wish: wishOf(options, project.unit),
    title,
    ...(variant !== undefined && { variant: variantOf(project, variant) }),
  };
  const made = redraft(workspace, project, order);
  if ('why' in made) throw new Refusal(`cannot make another of ${project.slug}: ${made.why}`);
  await putInPlace(join(root, project.folder), folder, made.text);
  const after = await loadWorkspace(root, { namedFrom: cwd });
  const [study] = examine(after, projectsNamed([slug], after.projects));
  if (!study) throw new Error(`${slug} was not examined`);
  const findings = mergeFindings(study.findings);
  if (!options.quiet) {
    stdout.write(
      `wrote ${shown} from ${project.slug}\n\n${lines(made, project)}${await sheetsFor(study, after)}\n`,
    );
  }
  const printing = { ink: inkFor(terminal, options), projects: [study.project], summary: !options.quiet };
  stdout.write(printFindings(findings, printing));
  return isFailure(findings, false) ? 1 : 0;
}

/** The project to begin with. @throws Refusal where it is not there, or has errors itself. */
function sourceIn(workspace: Workspace, from: string, named: string | undefined): Project {
  const [study] = examine(workspace, projectsNamed([from], workspace.projects));
  if (!study) throw new Refusal(`there is no project named "${from}"`);
  if (!isFailure(mergeFindings(study.findings), false)) return study.project;
  throw new Refusal(`${from} has errors itself: fix them first; ${commandFor('proof', named)} lists them`);
}

/** What is to go in. @throws Refusal for what is no size or no number. */
function wishOf({ holds, count: typed }: DraftFromOptions, unit: Unit): Wish {
  if (holds === undefined)
    throw new Refusal('--from needs --holds: the size of what goes in, such as "4 x 5 x 1/8"');
  const read = parseSizes(holds, unit, 3);
  const [a, b, c] = read.ok ? read.value : [];
  if (!a || !b || !c || [a, b, c].some(({ length }) => length.sign <= 0 || length.greaterThan(LONGEST))) {
    throw new Refusal(`--holds takes three lengths, such as "4 x 5 x 1/8", not "${holds}"`);
  }
  const item = [a.length, b.length, c.length] as const;
  if (typed === undefined) return { item };
  const count = /^\d{1,4}$/u.test(typed.trim()) ? Number(typed) : 0;
  if (count < 1 || count > 1000)
    throw new Refusal(`--count takes a whole number from 1 to 1000, not "${typed}"`);
  return { item, count };
}

/** The variant that is named. @throws Refusal where the project has none of that name. */
function variantOf({ slug, variant, others }: Project, typed: string): string {
  const names = [variant, ...others.map((other) => other.variant)].flatMap((each) => each?.id.value ?? []);
  const found = names.find((name) => name.toLowerCase() === typed.trim().toLowerCase());
  if (found !== undefined) return found;
  throw new Refusal(
    names.length === 0
      ? `${slug} has no variants: leave --variant out`
      : `${slug} has no variant named "${typed}"; its variants are: ${names.join(', ')}`,
  );
}

/** Puts the new folder in place whole: what the sheet needs from the old one, and the sheet. */
async function putInPlace(from: string, to: string, text: string): Promise<void> {
  const staged = join(to, '..', `.${process.pid}-draft`);
  try {
    await mkdir(staged);
    for (const name of await readdir(from)) {
      if (name === 'sheet.md' || name === LEDGER_FILE || name.startsWith('.')) continue;
      await cp(join(from, name), join(staged, name), { recursive: true });
    }
    await writeFile(join(staged, 'sheet.md'), text);
    await rename(staged, to);
  } catch (error) {
    await rm(staged, { recursive: true, force: true });
    const reason = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    throw new Refusal(`cannot write ${to} (${reason}): choose a folder you may write to`);
  }
}

function lines({ remade, dropped }: Redrafted, project: Project): string {
  const told = remade.flatMap(({ project: { variant }, changed, isCloser }) => {
    const of = variant && dropped.length === 0 ? `${variant.id.value}: ` : '';
    const closer = `There is no more than ${project.unit === 'in' ? '1/4 in' : '6 mm'} to spare each way: with as much as before, it would not proof clean.`;
    const pieces = changed.map(([old, now]) => tellChange(old, now, project));
    return [...pieces, ...(isCloser ? [closer] : [])].map((line) => of + line);
  });
  const { holds, session } = project;
  const [kept] = remade.flatMap((each) => each.project.variant?.id.value ?? []);
  if (dropped.length > 0) told.push(`Of its variants only ${kept} is kept, as the project itself.`);
  if (holds)
    told.push(
      `It still says that it holds "${holds.item}"; the words of the steps and the photos are those of ${project.slug}.`,
    );
  if (session) told.push('Its session is commented out: give it its own.');
  return told.map((line) => `${line}\n`).join('');
}

/** How many sheets one of it takes, the first of its variants; nothing where that cannot be planned, or it cannot be made. */
async function sheetsFor({ project, shapes, findings }: Study, { site }: Workspace): Promise<string> {
  if (isFailure(mergeFindings(findings), false)) return '';
  const bench = { kerf: Length.zero, trimMargin: Length.zero, trimmer: site.bench.trimmer.value };
  const tools = { highs: await loadHighs(), clock: () => performance.now() / 1000 };
  const order = { attendees: 1, spares: 0, bench, work: 1 };
  const result = planKit([{ project, shapes, attendees: 1 }], order, tools);
  if ('findings' in result) return '';
  const sheets = result.kit.stocks.map(({ stock, total }) => `${sayCount(total, 'sheet')} of ${stock.name}`);
  return sheets.length > 0 ? `One takes ${sheets.join(', ')}.\n` : '';
}
