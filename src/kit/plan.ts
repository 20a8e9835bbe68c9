import type { Money, Stock, StockSheet } from '../project/model.ts';
import type { PieceKind } from './demand.ts';
import type { PieceNames } from './piece-names.ts';
import type { SheetTree } from './sheet-tree.ts';
import type { CuttingStep } from './steps.ts';

/** Sheets cut alike. */
export type SheetLayout = {
  readonly sheet: StockSheet;
  readonly count: number;
  /** The whole sheet; its blanks are the plan's kinds of pieces. */
  readonly tree: SheetTree;
  readonly steps: readonly CuttingStep[];
  readonly names: readonly PieceNames[];
};

/** How one stock is cut for all kits. */
export type StockPlan = {
  readonly stock: Stock;
  readonly kinds: readonly PieceKind[];
  /** Sheets. */
  readonly total: number;
  /** No plan can do with fewer sheets than this. */
  readonly bound: number;
  /** No plan can be better: fewer sheets, or cheaper where several sizes have prices. */
  readonly proven: boolean;
  readonly seconds: number;
  /** Where sheets of several sizes have prices: the cost of this plan, and what no plan can be under. */
  readonly price?: { readonly total: Money; readonly bound: Money };
  readonly layouts: readonly SheetLayout[];
};
