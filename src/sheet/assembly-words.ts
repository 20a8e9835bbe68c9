import type { Piece } from '../project/model.ts';
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
  const lines = [...glued, ...(form ? [html`${form.closing}`] : [])];
  if (lines.length === 0) return undefined;
  return html`<ol class="said">${SafeHtml.join(lines.map((line) => html`<li>${line}</li>`))}</ol>`;
}
