import type { Labels } from '../words/labels.ts';
import { voiceOf } from '../words/voice.ts';
import type { ListedProject } from './listed.ts';

/** What the list is found by and shown as, in the order of a row. The page's script names them so, too. */
const COLUMNS = [
  'slug',
  'title',
  'summary',
  'parts',
  'tags',
  'level',
  'minutes',
  'duration',
  'occasion',
  'session',
  'picture',
  'accent',
] as const;

/**
 * The script that a page loads when its search is first used: the library that searches, and what there is to find, a row
 * a project. Links to papers are no part of it.
 * @param library The library's own script, which defines `MiniSearch`.
 */
export function searchScript(projects: readonly ListedProject[], library: string, labels: Labels): string {
  const voice = voiceOf(labels);
  const rows = projects.map(({ parts, picture, ...project }) => {
    const duration = project.minutes === undefined ? undefined : voice.duration(project.minutes);
    const row = { ...project, duration, parts: parts?.join(' '), picture: picture?.src };
    return COLUMNS.map((column) => row[column] ?? 0);
  });
  const found = JSON.stringify({ columns: COLUMNS, rows });
  return `${library}\nglobalThis.sheetwright = { ...globalThis.sheetwright, found: ${found}, MiniSearch };\n`;
}
