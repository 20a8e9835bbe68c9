import type { Columns, Measures } from '../words/measures.ts';
import { pieceSheetNamed } from '../words/names.ts';
import { html, type SafeHtml } from '../words/safe-html.ts';
import { scoreMoves, slantMoves, slantWords } from '../words/score-moves.ts';
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
  /** What is cut besides, once scored; undefined when nothing is. */
  readonly cuts: string | undefined;
};

/** In words, `Quarter turn clockwise: left edge along the top (6¾ in (171 mm))`; few positions stand on one line. */
type ScoreLine = Columns<SafeHtml> & { readonly words: SafeHtml; readonly few: boolean };

const FEW = 6;

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
        cuts: net.waste.length + net.slits.length > 0 ? voice.say('score-then-cut') : undefined,
      },
    ]),
  );
}

function printed({ rows, cuts }: ScoredPiece): string {
  return [cuts, ...rows.flatMap(({ words, lead, second }) => [words, lead, second])].join('\n');
}

function rowsOf({ editions, measures, voice }: Setting, sheet: string): readonly ScoreLine[] {
  const rows = scoreMoves(editions, sheet).map(({ turn, topEdge, along, at, run, isCut }) => {
    const words = voice.phrase(`score-turn-${turn}`, {
      edge: voice.say(`edge-${topEdge}`),
      length: measures.both([along]),
    });
    const [from, to] = [run?.from, run?.to].map((end) => end && measures.both([end]));
    return {
      words: from && to ? voice.phrase(isCut ? 'score-run-cut' : 'score-run', { words, from, to }) : words,
      few: at.length <= FEW,
      ...measures.columns(at, 'column'),
    };
  });
  const slants = slantMoves(editions, sheet).map((slant) => ({
    words: voice.phrase('score-slant', {}),
    few: true,
    lead: slantWords(slant, voice, (length) => measures.columns([length]).lead),
    ...(measures.headings.second !== undefined && {
      second: slantWords(slant, voice, (length) => measures.columns([length]).second ?? html``),
    }),
  }));
  return [...rows, ...slants];
}
