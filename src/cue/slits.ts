import { twins } from '../edition/editions.ts';
import { pieceSheets } from '../handout/piece-sheets.ts';
import { inVariant, type Setting } from '../handout/setting.ts';
import { Length } from '../measure/length.ts';
import { readRef } from '../project/ref.ts';
import type { FlatSegment } from '../shape/net.ts';
import { netNamed } from '../shape/sheets.ts';
import { pieceSheetNamed } from '../words/names.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { ofVariants, waysOf } from '../words/variants.ts';

/** How long the slits of every scored sheet are, equal ones together: `box: 4 of 2 1/4 in (57 mm)`. */
export function slitsOf(setting: Setting): readonly SafeHtml[] {
  const { editions, voice, measures } = setting;
  return pieceSheets(editions[measures.leading]).flatMap(({ piece, id, name, net }) => {
    if (net.folds.length === 0) return [];
    const ways = waysOf(
      editions,
      voice,
      (variant) => lengthsIn(inVariant(setting, variant), id),
      ({ text }) => text,
    );
    return ways.map(({ value, of }) => {
      const label = ofVariants(pieceSheetNamed(piece.id.value, name, voice.say), of, voice);
      return html`${voice.say('labeled', { label })} ${value}`;
    });
  });
}

function lengthsIn({ editions, measures, voice }: Setting, id: string): SafeHtml | undefined {
  const lengths =
    twins(editions, ({ shapes }) => netNamed(shapes.nets, readRef(id))?.slits.map(lengthOf)) ?? [];
  const alike = new Map<string, SafeHtml>();
  for (const length of lengths) {
    const key = String(length[editions.own]);
    const count = lengths.filter((other) => String(other[editions.own]) === key).length;
    alike.set(key, voice.phrase('cue-slit', { count, length: measures.both([length]) }));
  }
  return alike.size === 0 ? undefined : SafeHtml.join([...alike.values()], ', ');
}

/** Along the board, as every slit on a score line runs; of a slanted one the longer way. */
function lengthOf({ from, to }: FlatSegment): Length {
  return Length.max(from.x.minus(to.x).abs(), from.y.minus(to.y).abs());
}
