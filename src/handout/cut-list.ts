import { pieceScale } from '../drawing/piece.ts';
import type { DrawingRoom } from '../drawing/style.ts';
import { type Editions, ownEdition } from '../edition/editions.ts';
import type { Stock } from '../project/stock.ts';
import { stockOf } from '../shape/caliper.ts';
import { everyNet } from '../shape/sheets.ts';
import type { Measures } from '../words/measures.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import { ofVariants, sayWays, variantNames, variantsOf, type Way, waysOf } from '../words/variants.ts';
import type { Voice } from '../words/voice.ts';
import { type CutRow, rowOf } from './cut-row.ts';
import { pieceSheets } from './piece-sheets.ts';
import { inVariant, type Setting } from './setting.ts';
import { stockFacts, stocksUsed } from './supplies.ts';

/** Everything that is cut, by the paper it is cut from. */
type CutList = {
  readonly columns: Measures['headings'];
  readonly groups: readonly (CutGroup & { readonly rows: readonly CutRow[] })[];
  /** The same with a column for each variant, where there are some and there is room. */
  readonly table: CutTable | undefined;
};

type CutGroup = {
  readonly stock: string | undefined;
  /** `#rrggbb`, for a swatch beside the name. */
  readonly color: string | undefined;
  readonly facts: SafeHtml | undefined;
};

type CutTable = {
  readonly variants: readonly string[];
  /** In columns, that of the names included. */
  readonly width: number;
  readonly groups: readonly (CutGroup & { readonly rows: readonly TableRow[] })[];
};

/** A piece in every variant: a cell for those side by side that have it alike, an empty one for those that haven't it. */
type TableRow = { readonly name: string; readonly cells: readonly TableCell[] };

type TableCell = {
  readonly span: number;
  /** The variants it is of, where that isn't all: on a narrow screen the columns stand below one another. */
  readonly of: string;
  readonly cut: CutRow | undefined;
};

/** Room for the drawing of the largest piece, in millimeters of paper: in print the less, the more a page must hold. */
const ROOM = {
  few: { width: 32, height: 25 },
  many: { width: 26, height: 17 },
  most: { width: 20, height: 11 },
  large: { width: 19, height: 18 },
};
const MANY = 4;
const MOST = 6;

export function cutList(setting: Setting): CutList {
  const { measures, voice } = setting;
  const groups = waysToCut(setting);
  return {
    columns: measures.headings,
    groups: groups.map(({ pieces, ...group }) => ({
      ...group,
      rows: pieces.flatMap((ways) =>
        ways.map(({ value, of }) => ({ ...value, name: ofVariants(value.name, of, voice) })),
      ),
    })),
    table: tableOf(setting, groups),
  };
}

/** What is cut from one paper, each piece in every way that the variants have it. */
type CutWays = CutGroup & { readonly pieces: readonly (readonly Way<CutRow>[])[] };

function waysToCut(setting: Setting): readonly CutWays[] {
  const { editions, voice, measures } = setting;
  const alone = variantsOf(editions).map((variant) => inVariant(setting, variant));
  const room = roomFor(setting);
  const scale = Math.min(...alone.map((one) => pieceScale(one.editions[measures.leading], room)));
  const variants = alone.map((one) => cutsOf(one, scale));
  const all = variants.flat();
  return [...new Set(all.map(({ stock }) => stock))].map((id) => {
    const of = all.filter(({ stock }) => stock === id);
    const sheets = [...new Set(of.map(({ sheet }) => sheet))];
    return {
      ...groupOf(setting, id),
      pieces: sheets.map((sheet) => {
        const pick = (_: Editions, index: number): CutRow | undefined =>
          variants[index]?.find((each) => each.sheet === sheet && each.stock === id)?.row;
        return waysOf(editions, voice, pick, printed);
      }),
    };
  });
}

function groupOf(setting: Setting, id: string | undefined): CutGroup {
  const { editions, voice } = setting;
  const stockIn = (variant: Editions): Stock | undefined =>
    id === undefined ? undefined : ownEdition(variant).project.stock.get(id);
  const facts = sayWays(
    editions,
    voice,
    (variant) => {
      const stock = stockIn(variant);
      return stock && stockFacts(inVariant(setting, variant), stock);
    },
    ': ',
  );
  const [stock] = variantsOf(editions).flatMap((variant) => stockIn(variant) ?? []);
  return { stock: stock && typographic(stock.name, voice.say), color: stock?.color?.value, facts };
}

/** A sheet of a piece that is cut in one variant, by the id of its paper. */
type Cut = { readonly stock: string | undefined; readonly sheet: string; readonly row: CutRow };

/** By the papers, in the order the pieces name them. */
function cutsOf(one: Setting, scale: number): readonly Cut[] {
  const { editions, project } = one;
  const sheets = pieceSheets(ownEdition(editions));
  return [...stocksUsed(project), undefined].flatMap((stock) =>
    sheets
      .filter(({ piece }) => stockOf(piece, project) === stock)
      .flatMap((sheet): Cut[] => {
        const row = rowOf(one, sheet, scale);
        return row ? [{ stock: stock?.id.value, sheet: sheet.id, row }] : [];
      }),
  );
}

function printed({ drawing, times, lead, second, notes }: CutRow): string {
  return [drawing, times, lead, second, ...notes].join('\n');
}

/** More columns than this would leave no room for a size. */
const MOST_COLUMNS = 4;

function tableOf({ editions, target, voice }: Setting, groups: readonly CutWays[]): CutTable | undefined {
  const variants = variantNames(editions);
  const hasRoom = target !== 'large-print' && variants.length <= MOST_COLUMNS;
  if (variants.length < 2 || !hasRoom) return undefined;
  return {
    variants,
    width: variants.length + 1,
    groups: groups.map(({ pieces, ...group }) => ({
      ...group,
      rows: pieces.map((ways) => ({
        name: ways[0]?.value.name ?? '',
        cells: cellsOf(variants, ways, voice),
      })),
    })),
  };
}

function cellsOf(
  variants: readonly string[],
  ways: readonly Way<CutRow>[],
  voice: Voice,
): readonly TableCell[] {
  const cells: { readonly cut: CutRow | undefined; readonly names: string[] }[] = [];
  for (const [index, name] of variants.entries()) {
    const cut = ways.find(({ has }) => has[index])?.value;
    const last = cells.at(-1);
    if (last && last.cut === cut) last.names.push(name);
    else cells.push({ cut, names: [name] });
  }
  return cells.map(({ cut, names }) => ({
    cut,
    span: names.length,
    of: names.length === variants.length ? '' : voice.list(names).text,
  }));
}

function roomFor({ editions, measures, project, target }: Setting): DrawingRoom {
  if (target === 'large-print') return ROOM.large;
  if (target === 'page') return ROOM.few;
  // Drawings of variants stand beside one another.
  const sheets = everyNet(editions[measures.leading].shapes.nets).length * (project.others.length + 1);
  return sheets > MOST ? ROOM.most : sheets > MANY ? ROOM.many : ROOM.few;
}
