import type { ListedProject } from './listed.ts';

/**
 * The script that a page loads when its search is first used: the library that searches, and what there is to find, by
 * address. Links to papers are no part of it.
 * @param library The library's own script, which defines `MiniSearch`.
 */
export function searchScript(projects: readonly ListedProject[], library: string): string {
  const found = projects.map(({ slug, title, summary, tags, occasion, level, parts }) => ({
    id: `${slug}/index.html`,
    title,
    kind: [...tags, occasion, level].filter((word) => word !== undefined).join(' '),
    text: [summary, ...(parts ?? [])].filter((word) => word !== undefined).join(' '),
  }));
  const data = JSON.stringify(found);
  return `${library}\nglobalThis.sheetwright = { ...globalThis.sheetwright, found: ${data}, MiniSearch };\n`;
}
