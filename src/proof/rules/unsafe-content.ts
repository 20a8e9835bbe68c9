import type { Rule } from '../rule.ts';

/** HTML, a link in the Markdown, or one behind a key of the head or the settings. */
type Facts = { readonly what: 'HTML' | 'link in prose' | 'link' };

export const unsafeContent: Rule<Facts> = {
  severity: 'warning',
  summary: 'A sheet holds Markdown only: no HTML, no scripts, and no links other than http and https.',
  why: 'What is typed in a sheet is shown as text and never run, so text pasted from anywhere cannot harm a reader. It would also look odd on the printed sheet.',
  fails: { body: '## Cut\nCut <b>slowly</b>.\n', blames: '<b>' },
  passes: { with: '**slowly**', insteadOf: '<b>slowly</b>' },
  say: ({ what }) => ({
    message: SAID[what],
    remedy:
      what === 'HTML'
        ? 'write it in Markdown, or delete it'
        : 'write an address that begins with https://, or delete the link',
  }),
};

const SAID: Readonly<Record<Facts['what'], string>> = {
  HTML: 'HTML is not allowed in a sheet and is shown as plain text',
  'link in prose': 'only http, https and mailto links work in a sheet',
  link: 'only http and https links work in a sheet',
};
