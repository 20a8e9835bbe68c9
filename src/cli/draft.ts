import { existsSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { draftText } from '../make/draft.ts';
import { canBeProject } from '../project/load.ts';
import { slugOf } from '../project/slug.ts';
import type { Form } from '../shape/form.ts';
import { forms } from '../shape/forms/index.ts';
import { type DraftFromOptions, draftFrom } from './draft-from.ts';
import { type CommandRun, type CommonOptions, Refusal } from './terminal.ts';
import { commandFor, isWorkspace } from './workspace-folder.ts';

type DraftOptions = CommonOptions &
  Partial<DraftFromOptions> & {
    readonly form?: string;
  };

/** `sheetwright draft SLUG [workspace] [--form NAME | --from SLUG --holds SIZE]` */
export const run: CommandRun<DraftOptions> = async ([slug = '', named], options, terminal) => {
  requireSlug(slug);
  const { from } = options;
  if (from !== undefined) {
    if (options.form !== undefined)
      throw new Refusal('a project is made from a form or from another: use --form or --from, not both');
    return draftFrom(slug, named, { ...options, from }, terminal);
  }
  const further = (['holds', 'count', 'name', 'variant'] as const).find((key) => options[key] !== undefined);
  if (further) throw new Refusal(`--${further} goes with --from, which says what project to begin with`);
  const form = options.form === undefined ? undefined : formNamed(options.form);
  const folder = join(newHome(named, terminal.cwd), slug);
  const path = join(folder, 'sheet.md');
  const shown = relative(terminal.cwd, path);
  if (existsSync(path)) throw new Refusal(`${shown} is there already: choose another name`);
  await write(folder, path, draftText(slug, form));
  if (!options.quiet) {
    terminal.stdout.write(
      `wrote ${shown}: open it in a text editor, then run ${commandFor('proof', named)} and ${commandFor('make', named)}\n`,
    );
  }
  return 0;
};

function requireSlug(slug: string): void {
  if (!canBeProject(slug)) throw new Refusal(`a folder named "${slug}" is no project: choose another name`);
  const fit = slugOf(slug);
  if (fit === slug) return;
  throw new Refusal(
    `"${slug}" cannot be part of a web address: use lowercase letters, digits and hyphens${fit ? `, such as ${fit}` : ''}`,
  );
}

function formNamed(name: string): Form {
  const spoken = name.trim().toLowerCase().replaceAll('-', ' ');
  const form = forms.find((each) => each.name.replaceAll('-', ' ') === spoken);
  if (form) return form;
  throw new Refusal(
    `there is no form named "${name}"; choose one of: ${forms.map((each) => each.name).join(', ')}`,
  );
}

/** A first project makes its workspace: the folder named, the current one if it is a workspace, else projects/. */
function newHome(named: string | undefined, cwd: string): string {
  if (named !== undefined) return resolve(cwd, named);
  return isWorkspace(cwd) ? cwd : join(cwd, 'projects');
}

async function write(folder: string, path: string, text: string): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(path, text, { flag: 'wx' });
  } catch (error) {
    const reason = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    throw new Refusal(`cannot write ${path} (${reason}): choose a folder you may write to`);
  }
}
