import type { Length, Unit } from '../measure/length.ts';
import { printDecimal, printInches, printMetric, roundedSign } from '../measure/print.ts';
import { type EditionName, rulerUnit } from '../measure/ruler-unit.ts';
import type { PublishedValue } from '../project/ledger/ledger.ts';
import { unitIn } from './figures.ts';
import type { Say } from './labels.ts';

/** The lengths of a thing that changed, in each of some editions that has them: each by itself, and all as a size. */
export function lengthsChanged(
  value: PublishedValue,
  editions: readonly EditionName[],
  say: Say,
): { readonly lengths: readonly string[]; readonly size: string } {
  const rows = editions.map((edition) => figuresOf(value, edition, say)).filter((row) => row.length > 0);
  const lengths = (rows[0] ?? []).map((_, index) => bothWays(rows.map((row) => row[index] ?? NO_FIGURE)));
  return { lengths, size: bothWays(rows.map(asSize)) };
}

type UnitFigure = { readonly figure: string; readonly unit: string };

const NO_FIGURE: UnitFigure = { figure: '', unit: '' };

function figuresOf(value: PublishedValue, edition: EditionName, say: Say): readonly UnitFigure[] {
  const unit = unitIn(edition, say);
  return (value[edition] ?? []).map((length) => ({ figure: say.figure(print(length, unit)), unit }));
}

function asSize(figures: readonly UnitFigure[]): UnitFigure {
  return { figure: figures.map(({ figure }) => figure).join(' × '), unit: figures[0]?.unit ?? '' };
}

/** `4 × 5¼ in`, or `4 × 5¼ in (102 × 133 mm)` where both editions say it. */
function bothWays(figures: readonly UnitFigure[]): string {
  const [first = '', ...others] = figures.map(({ figure, unit }) => `${figure} ${unit}`);
  return others.length > 0 ? `${first} (${others.join(', ')})` : first;
}

/** Exact enough, whatever the length: two lengths that differ must never read the same. */
function print(length: Length, unit: Unit): string {
  if (roundedSign(length, rulerUnit(unit))) return printDecimal(length, unit, 4);
  return unit === 'in' ? printInches(length, 'set') : printMetric(length, unit);
}
