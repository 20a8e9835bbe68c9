import type { Editions } from '../edition/editions.ts';
import { underOf } from '../shape/shapes.ts';
import { ownNet } from '../shape/sheets.ts';
import { decorationOf } from './decoration.ts';
import type { Carry, Pile } from './pile.ts';
import type { DrawingStyle } from './style.ts';
import { listed } from './words.ts';

/** What is punched and stamped on each sheet of a pile, and how it lies there. */
export type Decorations = readonly (readonly [ReturnType<typeof decorationOf>, Carry])[];

/** What is punched and stamped on the base, then on each flat layer, and how it lies in the pile. */
export function decorationsIn(
  { base, placed }: Pile,
  editions: Editions,
  { shown: [leading] }: DrawingStyle,
): Decorations {
  const { nets } = editions[leading].shapes;
  const under = base.face === 'outside' ? underOf(nets, base) : undefined;
  const panel = base.part === undefined ? undefined : under?.panel;
  return [
    [under ? decorationOf(under.net, panel) : UNDECORATED, (point) => point],
    ...placed.map(({ drawn, pose }) => {
      const net = ownNet(nets, drawn.piece.id.value);
      return [net && net.folds.length === 0 ? decorationOf(net) : UNDECORATED, pose] as const;
    }),
  ];
}

const UNDECORATED = { motifs: [], images: [] };

/** The stamps on each sheet of a pile, each named once; undefined where there are none. */
export function stampsIn(decorations: Decorations, { say }: DrawingStyle): readonly (string | undefined)[] {
  return decorations.map(([{ images }]) => {
    const stamps = [...new Set(images.map(({ stamp }) => stamp))];
    return stamps.length > 0 ? say('drawing-tells-stamped', { images: listed(stamps, say) }) : undefined;
  });
}
