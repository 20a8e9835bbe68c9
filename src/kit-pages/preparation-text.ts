import type { PiecesKept, Preparation, SheetsDue } from '../season/preparation.ts';
import { ownPieceNamed } from './kinds.ts';
import type { KitWords } from './words.ts';

/** What is to be done, in plain words. */
export function preparationText(
  preparation: Preparation,
  words: KitWords,
): { readonly what: string; readonly details: readonly string[] } {
  const { voice } = words;
  const { say } = voice;
  if (preparation.kind === 'buy')
    return {
      what: say('season-buy'),
      details: [
        inAList(
          preparation.lines.map(({ item }) => item),
          voice.language,
        ),
      ],
    };
  const { project } = preparation.session;
  const title = project.title.value;
  if (preparation.kind === 'meet')
    return { what: title, details: [voice.count('kit-attendees', preparation.attendees)] };
  if (preparation.kind === 'ahead')
    return {
      what: say('season-ahead', { title }),
      details: preparation.steps.map(({ title: step, dry }) =>
        dry > 0 ? say('season-dry', { step, time: voice.duration(dry) }) : step,
      ),
    };
  const { sheets, taken, kept } = preparation;
  return {
    what: say('season-cut', { title }),
    details: [
      ...sheetsTexts(sheets, words),
      ...(taken.length > 0 ? [say('season-taken', { pieces: piecesText(taken, words) })] : []),
      ...keptTexts(kept, words),
    ],
  };
}

/** A text for each paper: `Cream cardstock: 3 × layout 1, 2 × layout 4`. */
function sheetsTexts(sheets: readonly SheetsDue[], { voice: { say } }: KitWords): readonly string[] {
  const stocks = [...new Set(sheets.map(({ stock }) => stock))];
  return stocks.map((stock) => {
    const own = sheets.filter((each) => each.stock === stock);
    const layouts = own.map(({ layout, count }) => say('season-layout', { count, layout: layout + 1 }));
    return say('season-sheets', { stock: stock.name, layouts: layouts.join(', ') });
  });
}

/** A text for each later session. */
function keptTexts(kept: readonly PiecesKept[], words: KitWords): readonly string[] {
  const sessions = [...new Set(kept.map(({ piece }) => piece.session))];
  return sessions.map((session) => {
    const pieces = piecesText(
      kept.filter(({ piece }) => piece.session === session),
      words,
    );
    return words.voice.say('season-kept', { title: session?.project.title.value ?? '', pieces });
  });
}

function piecesText(pieces: readonly PiecesKept[], { voice }: KitWords): string {
  const each = pieces.map(({ piece, count }) =>
    voice.say('kit-bag-item', { amount: count, item: ownPieceNamed(piece, voice) }),
  );
  return each.join(', ');
}

function inAList(items: readonly string[], language: string): string {
  return new Intl.ListFormat(language, { type: 'conjunction' }).format([...new Set(items)]);
}
