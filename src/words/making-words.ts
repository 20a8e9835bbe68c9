import type { Piece } from '../project/model.ts';
import type { Face } from '../project/ref.ts';
import { foldNet } from '../shape/fold.ts';
import { type FoldStep, foldSteps } from '../shape/fold-order.ts';
import { forms } from '../shape/forms/index.ts';
import type { Net } from '../shape/net.ts';
import { panelForest } from '../shape/panel-tree.ts';
import type { Sheet } from '../shape/sheets.ts';
import { glueAreas } from '../shape/stacking/glue-areas.ts';
import { closingKey } from './form-words.ts';
import { partName, partNamed, pieceSheetNamed } from './names.ts';
import { html, SafeHtml } from './safe-html.ts';
import { capital } from './typographic.ts';
import type { Voice } from './voice.ts';

/**
 * What sticks to what, in order and by its sides, one sheet after the other, and how a ready-made form is closed.
 * `caliper` is the paper's thickness in millimeters. Undefined for a piece that is neither.
 */
export function assemblyWords(
  { id, body }: Piece,
  sheets: readonly Sheet[],
  caliper: number,
  voice: Voice,
): SafeHtml | undefined {
  const side = (face: Face): string => voice.say(face === 'inside' ? 'side-inside' : 'side-outside');
  const gluedOf = (net: Net): readonly SafeHtml[] =>
    glueAreas(net, caliper).map(({ from, to }) =>
      voice.phrase('stick', {
        from: partName(net, from.panel, voice),
        side: side(from.face),
        to: partName(net, to.panel, voice),
        other: side(to.face),
      }),
    );
  const glued = sheets.flatMap(({ name, net }) => {
    const lines = gluedOf(net);
    if (sheets.length === 1 || lines.length === 0) return lines;
    const sheet = voice.say('labeled', { label: capital(pieceSheetNamed(id.value, name, voice.say)) });
    return [html`${sheet}<ol>${itemsOf(lines)}</ol>`];
  });
  const form = body.kind === 'form' ? forms.find(({ name }) => name === body.form.value) : undefined;
  const lines = [...glued, ...(form ? [html`${voice.say(closingKey(form))}`] : [])];
  if (lines.length === 0) return undefined;
  return html`<ol class="said">${itemsOf(lines)}</ol>`;
}

function itemsOf(lines: readonly SafeHtml[]): SafeHtml {
  return SafeHtml.join(lines.map((line) => html`<li>${line}</li>`));
}

/** More panels than this are counted, not named. */
const MOST_NAMED = 4;
/** Folds of fewer degrees than this bend a panel that is made of strips. */
const BEND = 30;

/** What is done in each step of folding some sheets one after another: `Step 2 of 6: fold left bottom and right bottom`. */
export function stepWords(sheets: readonly Sheet[], voice: Voice): readonly string[] {
  const steps = sheets.flatMap(({ name, net }) => foldSteps(net).map((step) => ({ name, net, step })));
  return steps.map(({ name, net, step }, index) => {
    const turn = voice.say(isBend(step) ? 'turn-bend' : 'turn-fold', { parts: partsOf(net, step, voice) });
    const place = { step: index + 1, count: steps.length, turn };
    return name === undefined
      ? voice.say('turn-step', place)
      : voice.say('turn-step-of', { ...place, sheet: partNamed(name, voice.say) });
  });
}

function isBend({ folds }: FoldStep): boolean {
  return folds.every(({ angle }) => angle < BEND);
}

/** The panels that are turned, in words. */
function partsOf(net: Net, { folds }: FoldStep, voice: Voice): string {
  const shape = foldNet(net, { at: 0 });
  const joints = panelForest(shape.net, shape.base).trees.flatMap((tree) => tree.joints);
  const turned = joints
    .filter(({ fold }) => folds.includes(fold))
    .map(({ child }) => shape.net.panels.find(({ id }) => id === child)?.partOf ?? child);
  const names = [...new Set(turned)].map((id) => partName(net, id, voice).text);
  if (names.length > MOST_NAMED) {
    const named = names.slice(0, MOST_NAMED - 1);
    return voice.say('turn-more', { parts: named.join(', '), count: names.length - named.length });
  }
  return voice.list(names).text;
}
