import type { Reader } from '../grammar/reader.ts';
import type { Project, Prose, Step } from '../model.ts';
import { everyProse } from '../prose/prose.ts';
import { pieceIn, writeName } from '../ref.ts';
import type { At } from '../source.ts';
import type { Supply } from '../supply.ts';
import { supplyCalled, supplyNamed } from '../supply-names.ts';
import type { MeasuredBlock } from './read-measurements.ts';
import { sharedName } from './shared.ts';

/** Reports every name in a sheet that nothing there has: of a piece, a stock, a stamp, an ink, a supply. */
export function checkNames(
  { measurements, supplies }: { readonly measurements: MeasuredBlock; readonly supplies: readonly Supply[] },
  body: Pick<Project, 'introduction' | 'steps'>,
  reader: Reader,
): void {
  checkReferences(measurements, everyProse(body), reader);
  checkStamps(measurements, supplies, reader);
  checkUses(body.steps, supplies, reader);
}

/**
 * Reports every name of a piece or a stock that is not there: in `stock:`, in `on:`, in `holds:` and in the prose. Whether a piece
 * has the panel that is named is for its shape to say. A name that was written but could not be read is no fault here.
 */
function checkReferences(
  { block: { names, holds }, written }: MeasuredBlock,
  prose: readonly Prose[],
  { shared, report }: Reader,
): void {
  const everyStock = (): readonly string[] => [
    ...new Set([...names.stock, ...[...shared.values.stock.keys()].map(sharedName)]),
  ];
  const check = (what: string, name: At<string>, known: readonly string[], among = () => known): void => {
    if (known.includes(name.value)) return;
    report({ rule: 'unknown-reference', at: name.at, facts: { what, name: name.value, among: among() } });
  };
  for (const piece of written) {
    if (piece.stock) check('stock', piece.stock, names.stock, everyStock);
    const base = piece.on && pieceIn(piece.on);
    for (const name of [base, ...piece.holds, ...piece.around]) if (name) check('piece', name, names.pieces);
  }
  if (holds?.in) check('piece', holds.in, names.pieces);
  for (const { of } of prose.flatMap(({ references }) => references)) {
    if (!names.pieces.includes(writeName(of.value))) check('piece', pieceIn(of), names.pieces);
  }
}

/** Reports every supply that a step is to use and that isn't there. */
function checkUses(
  steps: readonly Step[],
  supplies: readonly Supply[],
  { report }: Pick<Reader, 'report'>,
): void {
  for (const { value: name, at } of steps.flatMap(({ uses }) => uses)) {
    if (supplyCalled(supplies, name)) continue;
    const among = supplies.map(({ item }) => item.value);
    report({ rule: 'unknown-reference', at, facts: { what: 'supply', name, among } });
  }
}

/** Reports every stamp and ink of a stamped image that is not among the supplies. */
function checkStamps(
  { written }: MeasuredBlock,
  supplies: readonly Supply[],
  { report }: Pick<Reader, 'report'>,
): void {
  for (const { stamp, ink } of written.flatMap(({ impressions }) => impressions)) {
    for (const [kind, name] of [['stamp', stamp] as const, ...(ink ? [['ink', ink] as const] : [])]) {
      if (supplyNamed(supplies, kind, name.value)) continue;
      const among = supplies.flatMap((supply) => (supply.kind.value === kind ? [supply.item.value] : []));
      report({ rule: 'unknown-reference', at: name.at, facts: { what: kind, name: name.value, among } });
    }
  }
}
