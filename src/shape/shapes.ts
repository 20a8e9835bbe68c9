import type { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import type { Finding } from '../project/finding.ts';
import type { Piece } from '../project/model.ts';
import type { Named, Ref } from '../project/ref.ts';
import type { Lying } from './lying.ts';
import type { Net, Opening, Panel } from './net.ts';
import { type Nets, type Sheet, sheetsOf } from './sheets.ts';

/** What shows of a base between two outlines: where least, and whether it is the same all round. */
export type Border = { readonly least: Length; readonly isEven: boolean };

/**
 * The paper right under a layer: a sheet, and the panel of it; none where the layer lies on a folded sheet as a whole. Of
 * one that is behind an opening, that too.
 */
export type Under = { readonly net: Net; readonly panel?: Panel; readonly opening?: Opening };

/**
 * One piece lying on its base. All is measured on the face that it lies on, as you look at that: on the inside of a sheet
 * the left is that of the sheet turned over like a page, and the top stays the top.
 */
export type Layer = Lying & {
  readonly piece: Piece;
  readonly under: Under;
  /** What it lies on. */
  readonly on: Ref;
  readonly base: Size;
  /** Of a layer on a base that is no rectangle, where the reveals at its four sides do not tell what shows round it. */
  readonly border?: Border;
};

/** All geometry of a project: built once, read by rules, drawings and the kit. */
export type Shapes = {
  readonly nets: Nets;
  /** Every piece that lies on something whose size is known, in the order they are stuck on. */
  readonly layers: readonly Layer[];
  /** What cannot be: a score line outside its piece, a form deeper than it is wide. */
  readonly findings: readonly Finding[];
};

/**
 * What a base names, on whichever sheet of its piece: a panel by its name, else by its cell, in either case of letters; an
 * opening. Undefined where the piece has no net or no such part.
 */
export function underOf(nets: Nets, { piece, part }: Named): Under | undefined {
  return partUnder(sheetsOf(nets, piece), part);
}

/** The same among the sheets of one piece. */
export function partUnder(of: readonly Sheet[], name: string | undefined): Under | undefined {
  const sheets = of.map(({ net }) => net);
  const [own] = sheets;
  if (!own || name === undefined) return own && wholeSheet(own);
  const panels = sheets.flatMap((net) => net.panels.map((panel) => ({ net, panel })));
  return (
    panels.find(({ panel: { id } }) => id === name) ??
    openingUnder(sheets, name) ??
    panels.find(({ panel }) => panel.name === undefined && panel.id === name.toUpperCase())
  );
}

function openingUnder(sheets: readonly Net[], name: string): Under | undefined {
  for (const net of sheets) {
    const opening = net.openings?.find((each) => each.name === name);
    const panel = net.panels.find(({ id }) => id === opening?.panel);
    if (opening && panel) return { net, panel, opening };
  }
  return undefined;
}

function wholeSheet(net: Net): Under {
  const panel = onlyPanel(net);
  return panel ? { net, panel } : { net };
}

/** The panel of a net that has but one. */
export function onlyPanel(net: Net | undefined): Panel | undefined {
  return net?.panels.length === 1 ? net.panels[0] : undefined;
}
