import { sheetWith } from '../example.ts';
import type { Rule } from '../rule.ts';

const box = (inside: string): string =>
  sheetWith({ pieces: `box: { stock: cream, form: clip-top box, inside: ${inside} }` });

export const formLimit: Rule<'form-limit'> = {
  id: 'form-limit',
  severity: 'error',
  summary: 'A ready-made form is asked only for what it can be.',
  why: 'Beyond certain proportions a form stops working: flaps grow longer than the opening they close, tabs wider than what they are glued to. The limit is said with the measurement that passes it, before any paper is cut.',
  fails: { sheet: box('1 x 1 1/2 x 3'), blames: '1 1/2' },
  passes: { sheet: box('1 1/2 x 1 x 3') },
};
