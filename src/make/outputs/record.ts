import type { Output } from '../output.ts';
import { filesIn, type ProjectRecord } from '../records.ts';

/** `site/make.json`: what was made of each project, from what, with which version. */
export const record: Output = {
  ofSite: ({ records, files: { version } }) => [
    {
      path: 'site/make.json',
      produce: () => {
        const projects = Object.fromEntries(records.map(([slug, made]) => [slug, summaryOf(made)]));
        return `${JSON.stringify({ sheetwright: version, projects }, null, 1)}\n`;
      },
    },
  ],
};

/** What is the same for all of them, and may be of this machine, is left out. */
const NOT_OF_THE_PROJECT = new Set(['program', 'templates', 'browser', 'pdf', 'offered']);

function summaryOf(made: ProjectRecord): unknown {
  const { source, sha256, inputs } = made;
  const files = Object.entries(filesIn(made)).map(([path, file]) => [path, file.sha256]);
  return {
    source,
    sha256,
    from: Object.fromEntries(Object.entries(inputs).filter(([name]) => !NOT_OF_THE_PROJECT.has(name))),
    files: Object.fromEntries(files),
  };
}
