import type { Twin } from '../edition/editions.ts';
import type { Edge } from '../project/net-as-written.ts';
import type { Columns, Measures } from '../words/measures.ts';
import { pieceSheetNamed } from '../words/names.ts';
import { html, type SafeHtml } from '../words/safe-html.ts';
import { foldWords, positionsByFold, runsByFold, scoreMoves, slantMoves } from '../words/score-moves.ts';
import { ofVariants, variantsOf, waysOf } from '../words/variants.ts';
import { pieceSheets } from './piece-sheets.ts';
import { inVariant, type Setting } from './setting.ts';

/** Everything that is scored, as said at the board. */
type ScoreList = {
  readonly columns: Measures['headings'];
  readonly pieces: readonly ScoredPiece[];
};

type ScoredPiece = {
  readonly name: string;
  readonly rows: readonly ScoreLine[];
  readonly slants: readonly SlantLine[];
  /** What is cut besides, once scored; undefined when nothing is. */
  readonly cuts: string | undefined;
};

/** In words, `Quarter turn clockwise: left edge along the top (6¾ in (171 mm))`; then its positions. */
type ScoreLine = {
  readonly words: SafeHtml;
  readonly positions: Columns<SafeHtml>;
  /** So little that it goes on one line. */
  readonly isShort: boolean;
};

/** How many positions and words for their folds go on one line of a page at the most, in both units. */
const MOST_ON_LINE = 7;

/** A line at an angle: where it starts and ends, each from the left and from the top edge; then how it folds. */
type SlantLine = readonly SafeHtml[];

/** The score list of a sheet; undefined when nothing in it is scored. */
export function scoreList(setting: Setting): ScoreList | undefined {
  const { editions, measures, voice } = setting;
  const variants = variantsOf(editions).map((variant) => piecesOf(inVariant(setting, variant)));
  const ids = new Set(variants.flatMap((pieces) => [...pieces.keys()]));
  const pieces = [...ids].flatMap((id) =>
    waysOf(editions, voice, (_, index) => variants[index]?.get(id), printed).map(({ value, of }) => ({
      ...value,
      name: ofVariants(value.name, of, voice),
    })),
  );
  return pieces.length === 0 ? undefined : { columns: measures.headings, pieces };
}

/** What is scored of one variant, by the sheets of its pieces. */
function piecesOf(one: Setting): ReadonlyMap<string, ScoredPiece> {
  const { editions, measures, voice } = one;
  const scored = pieceSheets(editions[measures.leading]).filter(
    ({ net }) => net.scores.length + (net.slants?.length ?? 0) > 0,
  );
  return new Map(
    scored.map(({ piece, id, name, net }) => [
      id,
      {
        name: pieceSheetNamed(piece.id.value, name, voice.say),
        rows: rowsOf(one, id),
        slants: slantsOf(one, id),
        cuts: net.waste.length + net.slits.length > 0 ? voice.say('score-then-cut') : undefined,
      },
    ]),
  );
}

function printed({ rows, slants, cuts }: ScoredPiece): string {
  const straight = rows.flatMap(({ words, positions: { lead, second } }) => [words, lead, second]);
  return [cuts, ...straight, ...slants.flat()].join('\n');
}

function rowsOf({ editions, measures, voice }: Setting, sheet: string): readonly ScoreLine[] {
  return scoreMoves(editions, sheet).map((move) => {
    const { turn, topEdge, along, at, run, isCut } = move;
    const words = voice.phrase(`score-turn-${turn}`, {
      edge: voice.say(`edge-${topEdge}`),
      length: measures.both([along]),
    });
    const [from, to] = [run?.from, run?.to].map((end) => end && measures.both([end]));
    return {
      words: from && to ? voice.phrase(isCut ? 'score-run-cut' : 'score-run', { words, from, to }) : words,
      positions: {
        ...measures.columns(at, 'column'),
        lead: positionsByFold(move, voice, (some) => measures.columns(some, 'column').lead),
      },
      isShort: at.length + runsByFold(move).length <= MOST_ON_LINE,
    };
  });
}

function slantsOf({ editions, measures, voice }: Setting, sheet: string): readonly SlantLine[] {
  const said = (place: Edge | Twin): SafeHtml =>
    typeof place === 'string' ? html`${voice.say(`edge-${place}`)}` : measures.both([place]);
  return slantMoves(editions, sheet).map(({ from, to, folds }) => [
    ...[from, to].flatMap(({ across, down }) => [said(across), said(down)]),
    foldWords(folds, voice),
  ]);
}
