import { sheetWith } from '../example.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { quote } from '../words.ts';

export const sameSlug: Rule<'same-slug'> = {
  id: 'same-slug',
  severity: 'error',
  summary: 'No two projects have the same address.',
  why: "A project's address on the site is made from its folder's name, in small letters with hyphens. Two folders that differ only in capitals or blanks would write over each other's pages.",
  fails: {
    sheet: sheetWith({}),
    files: { 'Card/sheet.md': sheetWith({}) },
  },
  passes: {
    sheet: sheetWith({}),
    files: { 'tag/sheet.md': sheetWith({}) },
  },
  ownEditionOnly: true,
  check: ({ workspace, project, report }: ProofContext) => {
    const others = workspace.projects.filter(
      (other) => other.slug === project.slug && other.file.path !== project.file.path,
    );
    for (const other of others) {
      report({
        message: `the folders ${quote(project.folder)} and ${quote(other.folder)} both become the address ${project.slug}/`,
        remedy: 'give one of the two folders another name',
      });
    }
  },
};
