import { sheetsOf } from '../shape/shapes.ts';
import type { Measures } from '../words/measures.ts';
import { nameOf, partNamed } from '../words/names.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { type ScoreMove, scoreMoves } from '../words/score-moves.ts';
import type { Voice } from '../words/voice.ts';
import { type EditionColumns, editionColumns } from './columns.ts';
import type { Setting } from './setting.ts';

/** Everything that is scored, as said at the board. */
export type ScoreList = {
  readonly columns: EditionColumns;
  readonly pieces: readonly ScoredPiece[];
};

export type ScoredPiece = {
  readonly name: string;
  readonly rows: readonly ScoreRow[];
  /** What is cut besides, once scored; undefined when nothing is. */
  readonly cuts: string | undefined;
};

export type ScoreRow = {
  readonly words: SafeHtml;
  readonly lead: SafeHtml;
  readonly second: SafeHtml;
  /** So few positions that they stand on one line. */
  readonly few: boolean;
};

const FEW = 6;

/** The score list of a sheet; undefined when nothing in it is scored. */
export function scoreList(setting: Setting): ScoreList | undefined {
  const { editions, project, measures, voice } = setting;
  const { nets } = editions[measures.leading].shapes;
  const pieces = [...project.pieces.keys()].flatMap((id) =>
    sheetsOf(nets, id).flatMap(({ name, net }) => {
      if (net.scores.length === 0) return [];
      const cuts = net.waste.length + net.slits.length > 0;
      return [
        {
          name:
            name === undefined
              ? nameOf(id)
              : voice.say('piece-part', { piece: nameOf(id), part: partNamed(name, voice.say) }),
          rows: rowsOf(setting, name === undefined ? id : `${id}.${name}`),
          cuts: cuts ? voice.say('score-then-cut') : undefined,
        },
      ];
    }),
  );
  return pieces.length === 0 ? undefined : { columns: editionColumns(setting), pieces };
}

function rowsOf({ editions, measures, voice }: Setting, sheet: string): readonly ScoreRow[] {
  return scoreMoves(editions, sheet).map((move) => ({
    words: moveWords(move, measures, voice),
    few: move.at.length <= FEW,
    lead: measures.alone(move.at, measures.leading, 'column'),
    second: measures.alone(move.at, measures.leading === 'inch' ? 'metric' : 'inch', 'column'),
  }));
}

/** `Quarter turn clockwise: left edge along the top (6¾ in (171 mm))`. */
function moveWords({ turn, topEdge, along }: ScoreMove, measures: Measures, voice: Voice): SafeHtml {
  return voice.phrase(`score-turn-${turn}`, {
    edge: voice.say(`edge-${topEdge}`),
    length: measures.both([along]),
  });
}
