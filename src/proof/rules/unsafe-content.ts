import type { Rule } from '../rule.ts';

export const unsafeContent: Rule<{ readonly what: string }> = {
  severity: 'warning',
  summary: 'A sheet holds Markdown only: no HTML, no scripts, no links but http and https.',
  why: 'What is typed in a sheet is shown as text and never run, so that a text pasted from anywhere cannot do anything to a reader. It would look odd on the printed sheet, too.',
  fails: { body: '## Cut\nCut <b>slowly</b>.\n', blames: '<b>' },
  passes: { with: '**slowly**', insteadOf: '<b>slowly</b>' },
  say: ({ what }) => ({
    message: `${what} does nothing in a sheet`,
    remedy: what.includes('link')
      ? 'write an address that begins with https://, or take the link out'
      : 'write it in plain Markdown, or take it out',
  }),
};
