import type { Columns, Measures } from '../words/measures.ts';
import { pieceSheetNamed } from '../words/names.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { scoreMoves } from '../words/score-moves.ts';
import { pieceSheets } from './piece-sheets.ts';
import type { Setting } from './setting.ts';

/** Everything that is scored, as said at the board. */
type ScoreList = {
  readonly columns: Measures['headings'];
  readonly pieces: readonly {
    readonly name: string;
    readonly rows: readonly ScoreLine[];
    /** What is cut besides, once scored; undefined when nothing is. */
    readonly cuts: string | undefined;
  }[];
};

/** In words, `Quarter turn clockwise: left edge along the top (6¾ in (171 mm))`; few positions stand on one line. */
type ScoreLine = Columns<SafeHtml> & { readonly words: SafeHtml; readonly few: boolean };

const FEW = 6;

/** The score list of a sheet; undefined when nothing in it is scored. */
export function scoreList(setting: Setting): ScoreList | undefined {
  const { editions, measures, voice } = setting;
  const pieces = pieceSheets(editions[measures.leading])
    .filter(({ net }) => net.scores.length > 0)
    .map(({ piece, id, name, net }) => ({
      name: pieceSheetNamed(piece.id.value, name, voice.say),
      rows: rowsOf(setting, id),
      cuts: net.waste.length + net.slits.length > 0 ? voice.say('score-then-cut') : undefined,
    }));
  return pieces.length === 0 ? undefined : { columns: measures.headings, pieces };
}

function rowsOf({ editions, measures, voice }: Setting, sheet: string): readonly ScoreLine[] {
  return scoreMoves(editions, sheet).map(({ turn, topEdge, along, at }) => ({
    words: voice.phrase(`score-turn-${turn}`, {
      edge: voice.say(`edge-${topEdge}`),
      length: measures.both([along]),
    }),
    few: at.length <= FEW,
    ...measures.columns(at, 'column'),
  }));
}
