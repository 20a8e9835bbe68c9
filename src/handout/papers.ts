import { twins } from '../edition/editions.ts';
import type { Piece, Stock } from '../project/model.ts';
import { grammageOf } from '../shape/caliper.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import type { Setting } from './setting.ts';

/** The stock a piece is cut from. */
export function stockOf({ project }: Setting, piece: Piece): Stock | undefined {
  return piece.stock && project.stock.get(piece.stock.value);
}

/** Every stock the pieces take, in the order the pieces name them. */
export function stocksUsed(setting: Setting): readonly Stock[] {
  const used = [...setting.project.pieces.values()].flatMap((piece) => stockOf(setting, piece) ?? []);
  return [...new Set(used)];
}

/** `80 lb cover (216 g/m²), sheet 8½ × 11 in (216 × 279 mm), keep the print upright`. */
export function stockFacts(setting: Setting, stock: Stock): SafeHtml {
  const { voice } = setting;
  const facts = [
    ...(stock.weight ? [html`${weightText(setting, stock)}`] : []),
    ...sheetSizes(setting, stock),
    ...(stock.print?.value === 'upright' ? [html`${voice.say('print-upright')}`] : []),
  ];
  return SafeHtml.join(facts, ', ');
}

function weightText({ voice }: Setting, { weight }: Stock): string {
  if (!weight) return '';
  const gsm = Math.round(grammageOf(weight.value));
  if (weight.value.kind === 'grammage') return voice.say('weight-grammage', { gsm });
  const { pounds, grade } = weight.value;
  return voice.say('weight-basis', { pounds, grade: voice.say(`grade-${grade}`), gsm });
}

function sheetSizes({ editions, measures, voice }: Setting, stock: Stock): SafeHtml[] {
  return stock.sheets.flatMap((_, index) => {
    const size = twins(editions, ({ project }) => {
      const sheet = project.stock.get(stock.id.value)?.sheets[index];
      return sheet && [sheet.size.width.value, sheet.size.height.value];
    });
    return size ? [voice.phrase('stock-sheet', { size: measures.both(size) })] : [];
  });
}
