import type { Size } from '../measure/size.ts';
import type { Project } from '../project/model.ts';
import type { Money, Stock, StockSheet } from '../project/stock.ts';
import type { Shapes } from '../shape/shapes.ts';
import type { CuttingBench } from './bench.ts';
import type { SheetTree } from './sheet-tree.ts';
import type { Cost } from './shopping/cost.ts';
import type { ShoppingLine } from './shopping/line.ts';
import type { CuttingStep } from './steps.ts';

/** A piece, or one sheet of a form made of several, cut as a rectangle. */
export type CutPiece = {
  /** As the project names it: `front`, `box.lid`, `box (large)`. */
  readonly name: string;
  readonly piece: string;
  /** The further sheet of the piece. */
  readonly sheet: string | undefined;
  readonly size: Size;
  /** In square millimeters, without what is cut away round an outline. */
  readonly area: number;
  readonly perKit: number;
  /** How many kits it goes in. */
  readonly kits: number;
  /** The variant it is of, where others have it otherwise. */
  readonly variant: string | undefined;
  /** In a plan of several sessions, the one it is for. */
  readonly session?: PlannedSession | undefined;
};

/** A session among others that are planned together. */
export type PlannedSession = {
  readonly project: Project;
  /** `YYYY-MM-DD`. */
  readonly date: string;
};

/** Pieces of one size, cut alike: the front and the back of a box, say. */
export type PieceKind = {
  /** The first one's; the `flipped` ones have it the other way round. */
  readonly size: Size;
  readonly pieces: readonly (CutPiece & { readonly flipped: boolean })[];
};

/** For so many of a layout's sheets, which of the pieces of its kind each placed piece is. */
export type NamedSheets = { readonly count: number; readonly pieces: PieceKind['pieces'] };

/** Sheets cut alike. */
export type SheetLayout = {
  readonly sheet: StockSheet;
  readonly count: number;
  /** The whole sheet; its blanks are the plan's kinds of pieces. */
  readonly tree: SheetTree;
  readonly steps: readonly CuttingStep[];
  readonly named: readonly NamedSheets[];
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

/** What so many people make: the project itself, or one of its variants. */
export type Making = {
  readonly project: Project;
  readonly shapes: Shapes;
  /** The name of the variant. */
  readonly variant?: string | undefined;
  readonly session?: PlannedSession | undefined;
  readonly attendees: number;
};

/** Everything for one session: what to cut, what to buy, what it costs. */
export type Kit = {
  readonly project: Project;
  readonly makings: readonly Making[];
  readonly attendees: number;
  /** Kits more than attendees. */
  readonly spares: number;
  readonly bench: CuttingBench;
  readonly stocks: readonly StockPlan[];
  readonly shopping: readonly ShoppingLine[];
  readonly cost: Cost;
  /** What the paper of one kit weighs, and the stocks it leaves out because their weight is not known. */
  readonly weight: { readonly gramsPerKit: number; readonly without: readonly string[] };
};
