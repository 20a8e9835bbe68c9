import type { Kit } from '../kit/plan.ts';
import { pieceSheetNamed } from '../words/names.ts';
import { type KitInput, type KitPage, kitPageOf, wordsFor } from './shell.ts';
import type { KitWords } from './words.ts';

/** A page of labels to be cut apart, one for each bag. */
export function bagLabels(input: KitInput): KitPage {
  const { project, attendees, spares } = input.kit;
  const words = wordsFor(input);
  const { say, day } = words.voice;
  const title = say('kit-labels-title', { title: project.title.value });
  return kitPageOf(
    input,
    'kit-labels',
    { title, description: say('kit-labels-description') },
    {
      day: project.session && day(project.session.value),
      contents: contentsOf(input.kit, words),
      bags: Array.from({ length: attendees + spares }, (_, index) => ({
        number: say('kit-bag', { number: index + 1, count: attendees + spares }),
        isSpare: index >= attendees,
      })),
    },
  );
}

/** What is in every bag: pieces by stock, then what is used up and measured out. */
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
