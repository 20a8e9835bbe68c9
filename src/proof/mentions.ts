import type { Project, Step } from '../project/model.ts';
import type { Reference } from '../project/prose/reference.ts';

/** What a step names of a piece: the piece, a panel or a sheet of it. */
export function referencesTo(piece: string, { prose }: Step): readonly Reference[] {
  return prose.references.filter(({ of }) => of.value.piece === piece);
}

/** Where a piece is first named in the steps; undefined where it never is. */
export function firstReference(piece: string, { steps }: Project): Reference | undefined {
  const [first] = steps.flatMap((step) => referencesTo(piece, step));
  return first;
}

/** Whether a step speaks of a piece: names it, or has its short name as a word. */
export function speaksOf(piece: string, step: Step): boolean {
  return referencesTo(piece, step).length > 0 || speaksIn(piece, step.prose.texts);
}

/** Whether a piece's short name is a word of some texts. */
export function speaksIn(piece: string, texts: Step['prose']['texts']): boolean {
  const word = ` ${spaced(piece)} `;
  return texts.some(({ value }) => ` ${spaced(value)} `.includes(word));
}

/** In lowercase letters, its words one space apart. */
function spaced(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
