import type { Renderer } from '../handout/render.ts';
import type { Kit } from '../kit/plan.ts';
import type { Labels } from '../words/labels.ts';
import { pieceSheetNamed } from '../words/names.ts';
import { voiceOf } from '../words/voice.ts';
import { type KitInput, type KitShell, kitShell, wordsFor } from './shell.ts';
import type { KitWords } from './words.ts';

/** A page of labels to be cut apart, one for each bag. */
type BagLabels = KitShell & {
  readonly day: string | undefined;
  /** What is in every bag. */
  readonly contents: readonly string[];
  readonly bags: readonly { readonly number: string; readonly isSpare: boolean }[];
};

export function bagLabels(input: KitInput): BagLabels {
  const { kit, labels } = input;
  const { project, attendees, spares } = kit;
  const voice = voiceOf(labels);
  return {
    ...kitShell(input, {
      documentTitle: bagLabelsTitle(kit, labels),
      description: voice.say('kit-labels-description'),
      state: undefined,
    }),
    day: project.session && voice.day(project.session.value),
    contents: contentsOf(kit, wordsFor(input)),
    bags: Array.from({ length: attendees + spares }, (_, index) => ({
      number: voice.say('kit-bag', { number: index + 1, count: attendees + spares }),
      isSpare: index >= attendees,
    })),
  };
}

export function bagLabelsTitle({ project }: Kit, labels: Labels): string {
  return voiceOf(labels).say('kit-labels-title', { title: project.title.value });
}

export function renderBagLabels(page: BagLabels, renderer: Renderer, labels: Labels): string {
  return renderer.render('kit-labels', page, voiceOf(labels).say);
}

/** Pieces by stock, then what else goes into the bag: what is used up and measured out. */
function contentsOf({ stocks, shopping }: Kit, { voice, amount }: KitWords): readonly string[] {
  const pieces = stocks.flatMap(({ kinds }) =>
    kinds.flatMap((kind) =>
      kind.pieces.map(({ piece, sheet, perKit }) =>
        voice.say('kit-bag-item', { amount: perKit, item: pieceSheetNamed(piece, sheet, voice.say) }),
      ),
    ),
  );
  const supplies = shopping.flatMap(({ kind, item, each }) =>
    each && kind !== 'stock' ? [voice.say('kit-bag-supply', { amount: amount(each), item })] : [],
  );
  return [...pieces, ...supplies];
}
