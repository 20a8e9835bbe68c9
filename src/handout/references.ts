import { type Editions, ownEdition, sidesOf, type Twin, twins } from '../edition/editions.ts';
import type { Piece } from '../project/model.ts';
import type { ReferenceKind } from '../project/prose/reference.ts';
import { readRef } from '../project/ref.ts';
import { caliperOf, stockOf } from '../shape/caliper.ts';
import { boxSize, depthsOf, measuresOf } from '../shape/net.ts';
import { underOf } from '../shape/shapes.ts';
import { netNamed, type Sheet, sheetsNamed, sheetsOf } from '../shape/sheets.ts';
import { cuttingWords } from '../words/cutting-words.ts';
import { edgeWords, impressionWords } from '../words/decoration-words.ts';
import { assemblyWords } from '../words/making-words.ts';
import type { Measures } from '../words/measures.ts';
import { baseName, pieceSheetNamed } from '../words/names.ts';
import { hasName, saidOutline } from '../words/outlines.ts';
import { isAskew, layerTwin, leastReveal, revealLength } from '../words/reveals.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { scoresInline } from '../words/score-moves.ts';
import { semicolon } from '../words/typographic.ts';
import { sayWays } from '../words/variants.ts';
import type { Voice } from '../words/voice.ts';

/** What a directive such as `:size[front]` says; undefined where it names nothing. */
export type Refer = (kind: ReferenceKind, name: string) => SafeHtml | undefined;

/**
 * Answers the references of one step. The first mention of a piece brings its size along; later ones in the same step
 * give the name alone.
 */
export function referrer(editions: Editions, measures: Measures, voice: Voice): Refer {
  const mentioned = new Set<string>();
  const each = (
    pick: (variant: Editions) => SafeHtml | undefined,
    between: ', ' | ': ' = ', ',
  ): SafeHtml | undefined => sayWays(editions, voice, pick, between);
  const say: Partial<Record<ReferenceKind, (name: string) => SafeHtml | undefined>> = {
    piece: (name) => {
      const size = each((variant) => sizeAndOutline(variant, name, measures, voice));
      const label = nameHtml(editions, name, voice);
      if (!size || !label || mentioned.has(name)) return label;
      mentioned.add(name);
      return html`${label} <small class="size">${size}</small>`;
    },
    size: (name) => each((variant) => sizeSaid(variant, name, measures)),
    reveal: (name) => each((variant) => revealSaid(variant, name, measures, voice)),
    scores: (name) => each((variant) => scoresInline(variant, name, measures, voice), ': '),
    trims: (name) =>
      each((variant) => ofSheets(variant, name, (piece, sheets) => cuttingWords(piece, sheets, voice)), ': '),
    assembly: (name) =>
      each(
        (variant) =>
          ofSheets(variant, name, (piece, sheets) => {
            const { thickness } = caliperOf(stockOf(piece, ownEdition(variant).project));
            return assemblyWords(piece, sheets, thickness.mm, voice);
          }),
        ': ',
      ),
    edge: (name) => each((variant) => wholePhrases(edgeWords(variant, name, measures, voice), voice), ': '),
    impressions: (name) =>
      each((variant) => wholePhrases(impressionWords(variant, name, measures, voice), voice), ': '),
    count: (name) =>
      each((variant) => {
        const piece = ownEdition(variant).project.pieces.get(name);
        return piece && html`${piece.count.value}`;
      }),
  };
  return (kind, name) => say[kind]?.(name);
}

function wholePhrases(phrases: readonly SafeHtml[], { say }: Voice): SafeHtml | undefined {
  return phrases.length > 0 ? SafeHtml.join(phrases, semicolon(say)) : undefined;
}

function sizeSaid(editions: Editions, name: string, measures: Measures): SafeHtml | undefined {
  const size = sizeOf(editions, name);
  return size && measures.both(size);
}

/** `1 1/2 in (38 mm) circle`; its size alone of a rectangle, of what is drawn, and of an outline with lengths that would be too much to read. */
function sizeAndOutline(
  editions: Editions,
  name: string,
  measures: Measures,
  voice: Voice,
): SafeHtml | undefined {
  const size = sizeSaid(editions, name, measures);
  const outline = saidOutline(editions, name, (length) => measures.both([length]));
  const isShort =
    outline && hasName(outline) && Object.values(outline.values).every((value) => typeof value === 'number');
  if (!size || !isShort) return size;
  return voice.phrase('outline-sized', { size, outline: voice.phrase(outline.key, outline.values) });
}

function revealSaid(
  editions: Editions,
  name: string,
  measures: Measures,
  voice: Voice,
): SafeHtml | undefined {
  const layer = layerTwin(editions, name);
  if (!layer) return undefined;
  if (isAskew(layer[editions.own])) return measures.both([leastReveal(layer)]);
  return revealLength(layer, measures, voice);
}

/** Words about every sheet of a piece, or about one of them (`box.lid`). */
function ofSheets(
  editions: Editions,
  name: string,
  words: (piece: Piece, sheets: readonly Sheet[]) => SafeHtml | undefined,
): SafeHtml | undefined {
  const { project, shapes } = ownEdition(editions);
  const piece = project.pieces.get(name) ?? project.pieces.get(readRef(name).piece);
  const sheets = sheetsNamed(shapes.nets, readRef(name));
  return piece && sheets.length > 0 ? words(piece, sheets) : undefined;
}

function nameHtml(editions: Editions, name: string, voice: Voice): SafeHtml | undefined {
  const ref = readRef(name);
  if (!ownEdition(editions).project.pieces.has(ref.piece)) return undefined;
  const { piece, part } = ref;
  const isSheet = sheetsOf(ownEdition(editions).shapes.nets, piece).some((sheet) => sheet.name === part);
  const named = isSheet ? pieceSheetNamed(piece, part, voice.say) : baseName(ref, voice);
  return html`<b class="piece">${named}</b>`;
}

/** Width and height of a piece as cut (of a circle how wide it is), of a further sheet of it (`box.lid`), of a panel of it (`box.front`) or an opening; how wide a pop-up is and how deep its slits are. */
export function sizeOf(editions: Editions, name: string): readonly Twin[] | undefined {
  const { piece, part } = readRef(name);
  return twins(editions, ({ shapes }) => {
    const sheet = netNamed(shapes.nets, { piece, part });
    if (sheet || part === undefined) return sheet && measuresOf(sheet);
    const popUps = sheetsOf(shapes.nets, piece).flatMap(({ net }) => net.popUps ?? []);
    const popUp = popUps.find((each) => each.name === part);
    if (popUp) return [popUp.width, ...depthsOf(popUp)];
    const { panel, opening } = underOf(shapes.nets, { piece, part }) ?? {};
    return opening ? measuresOf(opening) : panel && sidesOf(boxSize(panel.box));
  });
}
