import { html } from '../words/safe-html.ts';

/** A page that says why another can't be shown, with a way to the list. */
export function toldPage(title: string, why: string): string {
  return `<!doctype html>\n${html`<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${title}</title></head>
<body><main class="preview-told"><h1>${title}</h1><p>${why}</p><p><a href="/">All projects</a></p></main></body>
</html>`}\n`;
}

const MOST_NAMED = 12;

/** Why there is no file at a path of the site. */
export function tellMissing(path: string, slugs: readonly string[]): string {
  const [slug = ''] = path.split('/');
  if (slugs.includes(slug)) {
    return `“${slug}” has no such page or file yet. If something was found in it, put that right: what is missing is made then, and shown here by itself.`;
  }
  const named = slugs.slice(0, MOST_NAMED).join(', ');
  const more = slugs.length > MOST_NAMED ? ' and others' : '';
  const others = slugs.length === 1 ? `Its only one is ${named}` : `There are ${named || 'none'}${more}`;
  return `There is no project “${slug}” in this workspace. ${others}.`;
}

/** In words for a person: a workspace that is not there is no riddle of the file system. */
export function tell(error: unknown, root = ''): string {
  const { code, path } = error as NodeJS.ErrnoException;
  if (code === 'ENOENT' && path === root) return `${root} is not there: the preview goes on once it is back`;
  return error instanceof Error ? error.message : String(error);
}
