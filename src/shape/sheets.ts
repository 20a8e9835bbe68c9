import type { Named } from '../project/ref.ts';
import type { Net } from './net.ts';

/** A sheet that a piece is made of, and its name: `lid`, `drawer`. The piece's own has none. */
export type Sheet = { readonly name?: string; readonly net: Net };

/**
 * The sheets of each piece by its id, its own first: one, but for a form made of several. None of a piece that could not
 * be made (a finding says why).
 */
export type Nets = ReadonlyMap<string, readonly Sheet[]>;

/** Every sheet of a piece; none where it has no net. */
export function sheetsOf(nets: Nets, piece: string): readonly Sheet[] {
  return nets.get(piece) ?? [];
}

/** The sheets that are named: all of a piece, or a further one alone (`box.lid`), which then needs no name. */
export function sheetsNamed(nets: Nets, { piece, part }: Named): readonly Sheet[] {
  const all = sheetsOf(nets, piece);
  return part === undefined ? all : all.flatMap(({ name, net }) => (name === part ? [{ net }] : []));
}

/** The net of every sheet of every piece. */
export function everyNet(nets: Nets): readonly Net[] {
  return [...nets.values()].flat().map(({ net }) => net);
}

/** The net of a piece's own sheet. */
export function ownNet(nets: Nets, piece: string): Net | undefined {
  return nets.get(piece)?.[0]?.net;
}

/** The net of a piece's own sheet, or of the further one that is named. */
export function netNamed(nets: Nets, named: Named): Net | undefined {
  return sheetsNamed(nets, named)[0]?.net;
}
