import type { Rule } from '../rule.ts';

/** HTML, a link in the Markdown, or one behind a key of the head or the settings. */
type Facts = { readonly what: 'HTML' | 'link in prose' | 'link' };

export const unsafeContent: Rule<Facts> = {
  severity: 'warning',
  summary: 'A sheet holds Markdown only: no HTML, no scripts, no links but http and https.',
  why: 'What is typed in a sheet is shown as text and never run, so that a text pasted from anywhere cannot do anything to a reader. It would look odd on the printed sheet, too.',
  fails: { body: '## Cut\nCut <b>slowly</b>.\n', blames: '<b>' },
  passes: { with: '**slowly**', insteadOf: '<b>slowly</b>' },
  say: ({ what }) => ({
    message: `${SAID[what]} does nothing in a sheet`,
    remedy:
      what === 'HTML'
        ? 'write it in plain Markdown, or take it out'
        : 'write an address that begins with https://, or take the link out',
  }),
};

const SAID: Readonly<Record<Facts['what'], string>> = {
  HTML: 'HTML',
  'link in prose': 'a link that is not http, https or mailto',
  link: 'a link that is not http or https',
};
