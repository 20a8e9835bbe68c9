import { startOf } from '../../project/source.ts';
import type { Rule } from '../rule.ts';

type Facts = { readonly length: number; readonly most: number };

/** File systems take 255 bytes a name, and what is made adds words of its own behind the slug. */
const MOST = 150;

export const longFolderName: Rule<Facts> = {
  severity: 'error',
  summary: "A project's folder has a name that can be used for files.",
  why: 'Every file that is made of a project begins with the name of its folder, and no file system takes endless names.',
  fails: { folder: `card-${'for-you-'.repeat(20)}` },
  passes: { folder: 'card-for-you' },
  ownEditionOnly: true,
  *check({ project: { slug, file } }) {
    if (slug.length > MOST) yield { at: startOf(file), facts: { length: slug.length, most: MOST } };
  },
  say: ({ length, most }) => ({
    message: `the name of this folder is ${length} characters long, and files named after it can be made up to ${most}`,
    remedy: 'give the folder a shorter name',
  }),
};
