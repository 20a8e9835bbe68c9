import { forms } from '../../../src/shape/forms/index.ts';
import type { Net } from '../../../src/shape/net.ts';
import { netOf } from '../boxes.ts';
import { netsOf } from '../forms/building.ts';

/** Every sheet of every form's own example, and of some at further settings: bent walls lie flat, as they are glued. */
const BY_FORM: readonly (readonly [string, Net])[] = [
  ...forms.map(({ name, example }) => [name, example.settings] as const),
  ['accordion card', ['size: 2 x 3', 'pages: 7']] as const,
  ['belly band', ['around: 4 x 1', 'height: 2']] as const,
  ['single-fold card', ['size: 4 x 5', 'fold: top']] as const,
  ['tuck-end box', ['inside: 2 x 1 x 3 1/2', 'ends: reverse']] as const,
  ['polygon box', ['side: 2', 'height: 3', 'lid: 1']] as const,
].flatMap(([name, lines], index) => {
  const settings = Object.fromEntries(lines.map((line) => line.split(/:\s*(.*)/u)));
  return netsOf(name, { settings }).map(({ strips: _, ...net }, sheet) => {
    const which = `${name}${index < forms.length ? '' : ` ${lines.at(-1)}`}${sheet > 0 ? ` (sheet ${sheet + 1})` : ''}`;
    return [which, net] as const;
  });
});

/** The same, and a card with a pop-up. */
export const FORM_NETS: readonly (readonly [string, Net])[] = [
  ...BY_FORM,
  [
    'pop-up',
    netOf(
      '\n  form: single-fold card\n  size: 4 x 6\n  openings: { step: { pop-up: 2, depth: [1, 1 1/2], across: back|front } }',
    ),
  ],
];
