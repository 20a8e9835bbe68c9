import { everyNode, placeOf } from '../../project/prose/markdown.ts';
import type { Rule } from '../rule.ts';

type Facts = {
  /** Where the link stands. */
  readonly among: 'supplies' | 'text';
};

export const missingDisclosure: Rule<Facts> = {
  severity: 'warning',
  summary: 'A link that looks like an affiliate link is marked as paid.',
  why: 'Anyone who is paid for a link must say so, clearly and beside it (in the United States 16 CFR 255.5). `paid: true` on a supply makes the disclosure appear by itself. Links whose address carries a referral are taken to be paid; if one is not, remove that part of the address.',
  fails: {
    head: 'supplies:\n  - { item: Tape, kind: adhesive, link: "https://example.org/tape?tag=bench" }',
    blames: 'https://example.org/tape?tag=bench',
  },
  passes: { with: 'bench", paid: true', insteadOf: 'bench"' },
  ownEditionOnly: true,
  *check({ project }) {
    for (const { link, paid } of project.supplies) {
      if (link && !paid && isReferral(link.value)) yield { at: link.at, facts: { among: 'supplies' } };
    }
    for (const node of everyNode(project.body)) {
      if (node.type !== 'link' || !isReferral(node.url)) continue;
      yield { at: placeOf(node, project.file), facts: { among: 'text' } };
    }
  },
  say: ({ among }) => ({
    message: 'this looks like an affiliate link, but it is not marked as paid',
    remedy:
      among === 'supplies'
        ? 'add "paid: true" to the supply, or use the plain address'
        : 'put the link among the supplies with "paid: true", or use the plain address',
  }),
};

/** Names that shops of every kind give to "who sent this customer". Common practice, no source. */
const REFERRAL =
  /^(?:ref|tag|aff|a_?id|aff_?id|affiliate(?:_?id)?|partner(?:_?id)?|referr(?:al|er)(?:_?(?:id|code))?|ref_?(?:id|code))$/iu;
const REFERRAL_FOLDER = /^(?:ref|aff|affiliate|referral)$/iu;

function isReferral(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const { searchParams, pathname } = new URL(address);
  return (
    [...searchParams.keys()].some((name) => REFERRAL.test(name)) ||
    pathname.split('/').some((folder) => REFERRAL_FOLDER.test(folder))
  );
}
