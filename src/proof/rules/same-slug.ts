import { startOf } from '../../project/source.ts';
import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

type Facts = { readonly folder: string; readonly other: string; readonly slug: string };

export const sameSlug: Rule<Facts> = {
  severity: 'error',
  summary: 'No two projects have the same address.',
  why: "A project's address on the site is made from its folder's name, in lowercase letters with hyphens. Two folders that differ only in capitals or spaces would overwrite each other's pages.",
  fails: { folder: 'Card' },
  passes: { folder: 'tag' },
  ownEditionOnly: true,
  *check({ workspace, project }) {
    const { slug, folder, file } = project;
    const others = workspace.addresses.get(slug)?.filter((other) => other !== folder) ?? [];
    for (const other of others) yield { at: startOf(file), facts: { folder, other, slug } };
  },
  say: ({ folder, other, slug }) => ({
    message: `the folders ${quote(folder)} and ${quote(other)} both become the address ${slug}/`,
    remedy: 'give one of the two folders another name',
  }),
};
