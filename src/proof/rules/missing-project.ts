import { nearestName } from '../../project/nearest.ts';
import { projectLinks } from '../links.ts';
import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

type Facts = {
  readonly address: string;
  /** The addresses there are. */
  readonly among: readonly string[];
};

export const missingProject: Rule<Facts> = {
  severity: 'warning',
  summary: 'A link to another project leads to one that exists.',
  why: 'A project that was renamed or deleted leaves its links behind, and anyone who follows one finds no page.',
  fails: {
    pieces: 'card: { stock: cream, cut: 4 x 5 }',
    body: '## Cut\nCut :piece[card] as for [the tag](../tga/).\n',
    files: { 'tag/sheet.md': '---\ntitle: Tag\nmeasurements: { pieces: {} }\n---\n' },
    blames: '[the tag](../tga/)',
  },
  passes: { with: '../tag/', insteadOf: '../tga/' },
  ownEditionOnly: true,
  *check({ workspace, project }) {
    for (const { value: address, at } of projectLinks(project)) {
      const { addresses } = workspace;
      if (!addresses.has(address)) yield { at, facts: { address, among: [...addresses.keys()] } };
    }
  },
  say: ({ address, among }) => {
    const nearest = nearestName(address, among);
    return {
      message: `there is no project ${quote(address)} to link to`,
      remedy: nearest === undefined ? 'take the link out, or put its address right' : `write ../${nearest}/`,
    };
  },
};
