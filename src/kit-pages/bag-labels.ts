import { allergensHeld, cautionsFor } from '../handout/cautions.ts';
import type { Kit } from '../kit/plan.ts';
import type { Person } from '../kit/roster.ts';
import type { Project } from '../project/model.ts';
import type { Voice } from '../words/voice.ts';
import { cutPieceNamed } from './kinds.ts';
import { handoutOf } from './roster-pages.ts';
import { type KitInput, type KitPage, kitPageOf, wordsFor } from './shell.ts';
import type { KitWords } from './words.ts';

/** A page of labels to be cut apart, one for each bag: those of a roster first, with their names. */
export function bagLabels(input: KitInput, people: readonly Person[] = []): KitPage {
  const { project } = input.kit;
  const words = wordsFor(input);
  const { voice } = words;
  const { say, date } = voice;
  const allergens = allergensHeld(project, voice);
  const owners = people.flatMap((person) => Array.from({ length: person.kits }, () => person));
  const title = say('kit-labels-title', { title: project.title.value });
  return kitPageOf(
    input,
    'kit-labels',
    { title, description: say('kit-labels-description') },
    {
      day: project.session && date(project.session.value),
      allergens: allergens && say('kit-bag-allergens', { allergens }),
      smallParts: people.length > 0 && smallPartsHeld(project, voice),
      bags: bagsOf(input.kit).map(({ variant, isSpare }, index, bags) => ({
        ...bagFor(owners[index], words),
        number: say('kit-bag', { number: index + 1, count: bags.length }),
        variant,
        isSpare,
        contents: contentsOf(input.kit, variant, words),
      })),
    },
  );
}

/** A bag is of one variant; or holds one of each, where everybody makes them all. */
type Bag = { readonly variant: string | undefined; readonly isSpare: boolean };

function bagsOf({ makings, attendees, spares }: Kit): readonly Bag[] {
  const isEach = makings.reduce((sum, making) => sum + making.attendees, 0) > attendees;
  const shares = isEach ? [{ variant: undefined, attendees }] : makings;
  return shares.flatMap((share) =>
    Array.from({ length: share.attendees + spares / shares.length }, (_, index) => ({
      variant: share.variant,
      isSpare: index >= share.attendees,
    })),
  );
}

/** What is in a bag: pieces by stock, then what is used up and measured out. */
function contentsOf(
  { stocks, shopping }: Kit,
  variant: string | undefined,
  { voice, amount }: KitWords,
): readonly string[] {
  const pieces = stocks.flatMap(({ kinds }) =>
    kinds.flatMap((kind) =>
      kind.pieces
        .filter((piece) => [variant, piece.variant].includes(undefined) || piece.variant === variant)
        .map((piece) =>
          voice.say('kit-bag-item', { amount: piece.perKit, item: cutPieceNamed(piece, voice) }),
        ),
    ),
  );
  const supplies = shopping.flatMap(({ kind, item, each }) =>
    each && kind !== 'stock' ? [voice.say('kit-bag-supply', { amount: amount(each), item })] : [],
  );
  return [...pieces, ...supplies];
}

/** Whose bag it is, the handout that goes in, and what to mind; lines to be filled in where nobody is named. */
function bagFor(person: Person | undefined, words: KitWords): object {
  if (!person) return { name: '', remarks: [] };
  const remarks = [handoutOf(person, words), person.note].filter((each) => each !== '');
  return { name: person.name, remarks };
}

/** The warning that goes on a bag with small parts in it. */
function smallPartsHeld(project: Project, voice: Voice): string | undefined {
  return cautionsFor(project, voice).find(({ id }) => id === 'small-parts')?.text;
}
