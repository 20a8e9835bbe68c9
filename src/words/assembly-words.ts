import type { Piece } from '../project/model.ts';
import type { Form } from '../shape/form.ts';
import { forms } from '../shape/forms/index.ts';
import type { Sheet } from '../shape/shapes.ts';
import { partName } from './part-names.ts';
import { html, SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

/** What sticks to what, in order, and how a ready-made form is closed. Undefined for a piece that is neither. */
export function assemblyWords({ body }: Piece, sheets: readonly Sheet[], voice: Voice): SafeHtml | undefined {
  const glued = sheets.flatMap(({ net }) =>
    net.glue.map(({ from, to }) =>
      voice.phrase('stick', { from: partName(net, from, voice), to: partName(net, to, voice) }),
    ),
  );
  const form =
    body.kind === 'form'
      ? forms.find(({ name }) => name === body.form.value.trim().toLowerCase())
      : undefined;
  const lines = [...glued, ...(form ? [html`${closingOf(form, voice)}`] : [])];
  if (lines.length === 0) return undefined;
  return html`<ol class="said">${SafeHtml.join(lines.map((line) => html`<li>${line}</li>`))}</ol>`;
}

/** As a form says itself in English, unless the sheet's language has words for it: a new form need not wait for them. */
function closingOf({ name, closing }: Form, { say }: Voice): string {
  const key = `closing-${name.replaceAll(' ', '-')}`;
  return say.has(key) ? say(key) : closing;
}
