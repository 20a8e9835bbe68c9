import type { Length } from '../measure/length.ts';
import type { Size } from '../measure/size.ts';
import type { RoundedCorners } from '../project/corners.ts';
import type { ImpressionAsWritten, PunchedEdge } from '../project/decoration.ts';
import type { Cell, Edge, FoldDirection, Slit } from '../project/net-as-written.ts';
import type { Place } from '../project/source.ts';

/**
 * A point on the flat paper: exact lengths from the left and from the top edge of the cut sheet, the outside of
 * the folded shape facing the reader.
 */
export type FlatPoint = { readonly x: Length; readonly y: Length };

/** An axis-parallel box on the flat paper. */
export type FlatBox = Readonly<Record<Edge, Length>>;

/**
 * How a panel lies when the shape is shown: `front` looks to the viewer, `back` away, `under` lies on the table, `over`
 * on top. Pictures alone ask for it; what is proofed follows from folds and glue.
 */
export type PanelRole = 'front' | 'back' | 'under' | 'over';

/** One flat part of the paper between score lines and cuts. */
export type Panel = {
  /** Unique in the net: its name if it has one (`front`), else its cell (`B3`). */
  readonly id: string;
  readonly name?: string;
  readonly role?: PanelRole;
  /** The panel that a strip of a curved one is part of, by its id. */
  readonly partOf?: string;
  /** The corners in order (clockwise as seen), tapers and rounded-off corners cut already; no holes. */
  readonly outline: readonly FlatPoint[];
  /** The rectangle a layer on this panel is measured against. */
  readonly box: FlatBox;
  /** Its outline follows from an angle: its box lies on no marks of a ruler. */
  readonly slanted?: true;
};

/** A score line's stretch between two panels, about which the second turns. */
export type Fold = {
  readonly panels: readonly [string, string];
  readonly from: FlatPoint;
  readonly to: FlatPoint;
  /** Seen from outside. */
  readonly direction: FoldDirection;
  /** Degrees out of the flat when fully folded; 0 for `flat`, and for the stretches of a curve, which bends instead. */
  readonly angle: number;
  /** Where it comes in the folding, from 1; derived from the net when absent. */
  readonly stage?: number;
};

/** One area stuck to another once folded. */
export type Mate = { readonly from: string; readonly to: string; readonly at?: Place };

/** One way in which another sheet goes into this one. */
export type Nesting = {
  /** The walls of the other that go in, on whose outside nothing may be too thick. */
  readonly walls: readonly string[];
  /** How much wider this one is there, score line to score line. */
  readonly by: Length;
  /** How many tabs are glued inside this one there, counted across. */
  readonly tabs: 0 | 1 | 2;
  /** How far it comes down over those walls; over all of them when absent. */
  readonly reach?: Length;
};

/** Scores as said at the board: this edge against the fence, at these positions from it. */
export type BoardScores = {
  readonly from: Edge;
  readonly at: readonly Length[];
  /** Where they begin and end, from the edge that lies along the top of the board; from edge to edge when absent. */
  readonly run?: { readonly from: Length; readonly to: Length };
  /** Cut there and scored nowhere: the line folds on no stretch of it. */
  readonly isCut?: true;
};

/** A straight cut inside the sheet, along a score line. */
export type FlatSegment = { readonly from: FlatPoint; readonly to: FlatPoint };

/** What is cut of a grid once it is scored, to be said by its rows and columns or by the names of its panels. */
export type GridCuts = {
  readonly trim: readonly Cell[];
  readonly slit: readonly Omit<Slit, 'at'>[];
  /** Panels whose free corners are cut at an angle. */
  readonly taper: readonly string[];
  /** Flaps cut shorter than the grid leaves them. */
  readonly shorten: readonly string[];
};

/** A row of motifs along an edge, as far as it goes. Lengths are measured along it, from its left or its top end. */
export type PunchedRow = {
  readonly written: PunchedEdge;
  readonly side: Edge;
  /** The edge from corner to corner of its panel. */
  readonly length: Length;
  readonly pitch: Length;
  readonly hole: Length;
  readonly depth: Length;
  /** How far the corners at the two ends are cut back along the edge. */
  readonly cut: Length;
  /** How much of the edge whole motifs leave free at either end: a corner cut back, or what is punched round it. */
  readonly clear: Length;
  /** Where the first motif begins; before the end, where that cuts it. */
  readonly start: Length;
  /** How many motifs there are, cut ones included; none where there is no room for one. */
  readonly count: number;
  /** The paper beyond the first and the last motif; less than nothing, by what is missing of it, where it is cut. */
  readonly ends: readonly [Length, Length];
  /** Whether a motif or a gap lies on the middle of the edge; neither, where the tool says where to start. */
  readonly middle?: 'hole' | 'gap';
};

/** The same where it is on the net: along the edge of a panel, or of the whole sheet. */
export type EdgeRow = PunchedRow & { readonly panel?: Panel; readonly box: FlatBox };

/** A stamped image on a panel, or on the whole sheet; its corners on the flat sheet. */
export type Impression = {
  readonly written: ImpressionAsWritten;
  /** The stamp and its ink, as the supplies call them. */
  readonly stamp: string;
  readonly ink?: string;
  readonly panel?: Panel;
  readonly size: Size;
  readonly turn: number;
  readonly corners: readonly FlatPoint[];
  /** What is left of the paper on each side; less than nothing where the image runs off. */
  readonly reveals: Readonly<Record<Edge, Length>>;
  readonly centered: { readonly across: boolean; readonly upright: boolean };
};

/** Paper left on each side of something. */
export type Margins = Readonly<Record<Edge, Length>>;

/** A part cut out of a panel: a window; a hole, which is punched; or a slot, which has no width. */
export type Opening = {
  /** Unique in the piece. */
  readonly name: string;
  /** The id of the panel that it is in. */
  readonly panel: string;
  readonly how: 'cut' | 'punched' | 'slit';
  /** Its outline; none of a rectangle, which may have rounded corners. */
  readonly shape?: NamedOutline;
  readonly corners?: RoundedCorners;
  /** Before it is turned; a slot is as wide as it is long. */
  readonly size: Size;
  /** Its corners on the sheet, clockwise; the two ends of a slot. */
  readonly outline: readonly FlatPoint[];
  /** What it leaves of the panel's box; negative where it passes the edge. */
  readonly margins: Margins;
  /** No distance was given for this direction, so it lies in the middle. */
  readonly centered: { readonly across: boolean; readonly upright: boolean };
};

/** A strip between two slits across a fold, which comes forward when the fold is opened. */
export type PopUp = {
  /** Unique in the piece. */
  readonly name: string;
  /** The panels on either side of the fold; and the parts of the strip that hang on them, which are panels too. */
  readonly panels: readonly [string, string];
  readonly parts: readonly [string, string];
  /** How far apart the slits are, and how deep they run into each of the panels. */
  readonly width: Length;
  readonly depths: readonly [Length, Length];
  /** Whether the fold runs up and down the sheet. */
  readonly isUpright: boolean;
  /** What is left of the fold at its upper and lower end, or to the left and the right. */
  readonly ends: readonly [Length, Length];
  readonly isCentered: boolean;
};

/** What an outline is, without its points. */
export type NamedOutline = {
  readonly name: string;
  /** By its nature it is as wide as it is high: one length says how large it is. */
  readonly across?: true;
  /** It is the same however it is turned. */
  readonly round?: true;
  /** What it measures besides its size, by the keys of its settings. */
  readonly lengths: Readonly<Record<string, Length>>;
  readonly counts: Readonly<Record<string, number>>;
};

/**
 * The flat, exact model of one cut and scored piece: what the template draws, the board is set to and the fold
 * proof folds. A flat piece is a net of one panel named like the piece, without folds.
 */
export type Net = {
  readonly size: Size;
  readonly panels: readonly Panel[];
  readonly folds: readonly Fold[];
  readonly scores: readonly BoardScores[];
  /** Score lines at an angle, which no board holds the sheet for. */
  readonly slants?: readonly FlatSegment[];
  readonly slits: readonly FlatSegment[];
  /** Parts of the cut sheet that are cut away: trimmed cells and tapers. */
  readonly waste: readonly (readonly FlatPoint[])[];
  /** The outline of a flat piece that is no rectangle. */
  readonly shape?: NamedOutline;
  /** What the outline of a form is called, if it has a name; what lies on it is placed by its sides all the same. */
  readonly called?: NamedOutline;
  readonly glue: readonly Mate[];
  /** Panels that are meant to move once all is made, with what hangs on them. */
  readonly opens?: readonly string[];
  /** How the piece's own sheet goes into this one. */
  readonly takes?: readonly Nesting[];
  /** What a border punch or an edge die cuts along its edges, and what is stamped on it. */
  readonly rows?: readonly EdgeRow[];
  readonly impressions?: readonly Impression[];
  readonly openings?: readonly Opening[];
  readonly popUps?: readonly PopUp[];
  /** Of a ready-made form that is a grid; a net given by its score lines has them as they were written. */
  readonly cuts?: GridCuts;
  /**
   * For a shape with bent panels (a pillow box): the same sheet as narrow flat strips, each turned a little against
   * the next. Folding views fold this one; everything else reads the net itself.
   */
  readonly strips?: Net;
};

/** How deep the slits of a pop-up are: one length, or two where they differ. */
export function depthsOf({ depths: [one, other] }: PopUp): readonly Length[] {
  return one.equals(other) ? [one] : [one, other];
}

/** The outline that a sheet is called by; none where it is a rectangle or a net of panels. */
export function outlineOf({ shape, called }: Net): NamedOutline | undefined {
  return shape ?? called;
}

/** Width and height of a sheet or an opening; one length where that says it all, as of a circle or a slot. */
export function measuresOf({ size, shape }: Pick<Net, 'size' | 'shape'>): readonly Length[] {
  return shape?.across || size.height.sign === 0 ? [size.width] : [size.width, size.height];
}

/** The least box round some points. @throws Error when there are none. */
export function boundsOf(points: readonly FlatPoint[]): FlatBox {
  const xs = points.map(({ x }) => x).sort((a, b) => a.compare(b));
  const ys = points.map(({ y }) => y).sort((a, b) => a.compare(b));
  const [left, top, right, bottom] = [xs[0], ys[0], xs.at(-1), ys.at(-1)];
  if (!left || !top || !right || !bottom) throw new Error('no points, no bounds');
  return { left, top, right, bottom };
}

export function boxSize(box: FlatBox): Size {
  return { width: box.right.minus(box.left), height: box.bottom.minus(box.top) };
}
