import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Handlebars from 'handlebars';
import { packageRoot } from '../recall/package-root.ts';
import { buildShapes } from '../shape/build.ts';
import type { Form } from '../shape/form.ts';
import { sheetsOf } from '../shape/sheets.ts';
import { readWorkspaceFromTexts } from '../shape/workspace.ts';

/** The title a slug suggests: `seed-packet-keeper` is `Seed packet keeper`. */
export function titleOf(slug: string): string {
  const words = slug.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The text of a new project, commented for who has never written one; it proofs clean as it is. */
export function draftText(slug: string, form: Form | undefined): string {
  const text = readFileSync(join(packageRoot(), 'templates', 'draft', 'sheet.md.hbs'), 'utf8');
  const render = Handlebars.compile(text, { noEscape: true });
  // `clip-top box` is a `box`, `single-fold card` a `card`: what its piece is called.
  const piece = form?.name.split(' ').at(-1);
  const { settings, layer } = form?.example ?? {};
  const facts = { title: titleOf(slug), form, piece, settings: settings?.join(', '), layer };
  return render({ ...facts, ...needsOf(render(facts), piece) });
}

/** Whether a piece has anything to score (a tag has not) and, once scored, to cut (a card has not). */
function needsOf(sheet: string, piece = ''): { readonly scored: boolean; readonly cut: boolean } {
  const [trial] = readWorkspaceFromTexts({ 'trial/sheet.md': sheet }).projects;
  const nets = trial ? sheetsOf(buildShapes(trial).nets, piece).map(({ net }) => net) : [];
  return {
    scored: nets.some(({ folds }) => folds.length > 0),
    cut: nets.some(({ waste, slits }) => waste.length + slits.length > 0),
  };
}
