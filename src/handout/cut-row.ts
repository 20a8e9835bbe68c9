import { drawingElement } from '../drawing/figures.ts';
import { pieceDrawing } from '../drawing/piece.ts';
import type { Twin } from '../edition/editions.ts';
import { printSize } from '../measure/print.ts';
import { UNIT_OF } from '../measure/ruler-unit.ts';
import { fitsWithin, quarterTurned, type Size } from '../measure/size.ts';
import type { Piece } from '../project/model.ts';
import { sheetsSold } from '../project/paper-sizes.ts';
import { type Ref, readRef } from '../project/ref.ts';
import type { StockSheet } from '../project/stock.ts';
import { stockOf } from '../shape/caliper.ts';
import type { Layer } from '../shape/shapes.ts';
import { netNamed } from '../shape/sheets.ts';
import { saidCorners } from '../words/corners.ts';
import { edgeWords, impressionWords, turnWords } from '../words/decoration-words.ts';
import type { Columns } from '../words/measures.ts';
import { baseName, pieceSheetNamed } from '../words/names.ts';
import { behindWords, openingNotes } from '../words/opening-words.ts';
import { goesWithSize, saidOutline } from '../words/outlines.ts';
import {
  isAskew,
  layerTwin,
  leastReveal,
  magnitudeOf,
  revealOn,
  revealPhrase,
  revealsOf,
} from '../words/reveals.ts';
import { html, SafeHtml } from '../words/safe-html.ts';
import { semicolon } from '../words/typographic.ts';
import type { PieceSheet } from './piece-sheets.ts';
import { sizeOf } from './references.ts';
import type { Setting } from './setting.ts';
import { paperSaid } from './supplies.ts';

/** A sheet of paper that is cut for a piece, in one variant of a project. */
export type CutRow = Columns<SafeHtml> & {
  readonly name: string;
  readonly drawing: SafeHtml | undefined;
  /** `× 2`; undefined for a single one. */
  readonly times: string | undefined;
  /** What it goes on with what reveal, its corners and the like. */
  readonly notes: readonly SafeHtml[];
};

/** One row a sheet: a form may be cut from several. */
export function rowOf(setting: Setting, { piece, id, name }: PieceSheet, scale: number): CutRow | undefined {
  const { editions, measures, drawings, voice } = setting;
  const size = sizeOf(editions, id);
  if (!size) return undefined;
  const drawing = pieceDrawing(editions, id, scale, drawings, false);
  return {
    name: pieceSheetNamed(piece.id.value, name, voice.say),
    drawing: drawing && drawingElement(drawing),
    times: piece.count.value > 1 ? voice.say('cut-times', { count: piece.count.value }) : undefined,
    ...sizeColumns(setting, id, size),
    notes: [
      ...(name === undefined ? notesOf(setting, piece) : []),
      ...openingNotes(editions, id, measures, voice),
      ...paperNote(setting, piece, id),
    ],
  };
}

/** `1 1/2 in circle`: with an outline that goes with the size. */
function sizeColumns(setting: Setting, id: string, size: readonly Twin[]): Columns<SafeHtml> {
  const { editions, measures, voice } = setting;
  const columns = measures.columns(size);
  const outline = saidOutline(editions, id, (length) => measures.both([length]));
  if (!outline || !goesWithSize(outline)) return columns;
  const lead = voice.phrase('outline-sized', {
    size: columns.lead,
    outline: voice.phrase(outline.key, outline.values),
  });
  return { ...columns, lead };
}

function notesOf(setting: Setting, piece: Piece): SafeHtml[] {
  const { editions, measures, voice } = setting;
  const layer = layerTwin(editions, piece.id.value);
  const both = (length: Twin): SafeHtml => measures.both([length]);
  const rounded = saidCorners(editions, piece.id.value, both);
  const outline = saidOutline(editions, piece.id.value, both);
  const images = impressionWords(editions, piece.id.value, measures, voice);
  return [
    ...(layer && piece.on ? [placeNote(setting, piece.on.value, layer)] : []),
    ...(outline ? (goesWithSize(outline) ? [] : [outline, ...rounded]) : rounded).map(({ key, values }) =>
      voice.phrase(key, values),
    ),
    ...edgeWords(editions, piece.id.value, measures, voice),
    ...(images.length > 0
      ? [voice.phrase('stamped-note', { images: SafeHtml.join(images, semicolon(voice.say)) })]
      : []),
  ];
}

/** That a piece is larger than the paper of an edition that is shown; its numbers never bend to the paper. */
function paperNote({ editions, measures, voice }: Setting, piece: Piece, id: string): SafeHtml[] {
  const notes = measures.shown.flatMap((name) => {
    const { project, shapes } = editions[name];
    const size = netNamed(shapes.nets, readRef(id))?.size;
    const stock = stockOf(piece, project);
    const sheets = stock ? sheetsSold(stock, project).map(sizeOfSheet) : [];
    const fits = sheets.some(
      (sheet) => size && [size, quarterTurned(size)].some((way) => fitsWithin(way, sheet)),
    );
    if (!size || fits || sheets.length === 0) return [];
    const papers = sheets.map((sheet) => paperSaid(sheet, voice) ?? printSize(sheet, UNIT_OF[name]));
    return voice.say('cut-larger-than-paper', { paper: papers.join(` ${voice.say('paired-or')} `) });
  });
  return [...new Set(notes)].map((note) => html`${note}`);
}

function sizeOfSheet({ size: { width, height } }: StockSheet): Size {
  return { width: width.value, height: height.value };
}

/** What a piece is stuck on, or behind. */
function placeNote(setting: Setting, on: Ref, layer: Twin<Layer>): SafeHtml {
  const { measures, voice } = setting;
  return behindWords(layer, measures, voice) ?? baseNote(setting, baseName(on, voice), layer);
}

/** `on the front of the box, showing 1/8 in (3 mm) all round`, and how it is turned. */
function baseNote(setting: Setting, base: SafeHtml, layer: Twin<Layer>): SafeHtml {
  const { turn } = layer.inch;
  const shows = isAskew(layer.inch)
    ? [cornerNote(setting, base, layer), ...offCenter(setting, layer)]
    : [sidesNote(setting, base, layer)];
  return SafeHtml.join([...shows, ...(turn === 0 ? [] : [turnWords(turn, setting.voice)])], ', ');
}

/**
 * How far a layer that says no border side by side is from an edge, along each way in which it isn't centered: from the one
 * that the author measures from, else from the nearer one.
 */
function offCenter({ measures, voice }: Setting, layer: Twin<Layer>): SafeHtml[] {
  const ways = [['left', 'right'] as const, ['top', 'bottom'] as const];
  return ways.flatMap(([first, second]) => {
    const [one, other] = [
      { size: revealOn(layer, first), side: first },
      { size: revealOn(layer, second), side: second },
    ];
    if (one.size.inch.equals(other.size.inch) || one.size.metric.equals(other.size.metric)) return [];
    const said = [one, other].find(
      ({ size, side }) => size.inch.sign >= 0 && layer.inch.piece.placement[side],
    );
    const { size, side } = said ?? (isNearer(one.size, other.size) ? one : other);
    return voice.phrase('opening-from', { size: measures.both([size]), side: voice.say(`opening-${side}`) });
  });
}

/** Whether one border is the smaller one that there is: what is past the edge leaves the other to measure. */
function isNearer({ inch: one }: Twin, { inch: other }: Twin): boolean {
  return one.sign >= 0 && (other.sign < 0 || one.lessThan(other));
}

function cornerNote({ measures, voice }: Setting, base: SafeHtml, layer: Twin<Layer>): SafeHtml {
  const reveal = leastReveal(layer);
  const least = measures.both([magnitudeOf(reveal)]);
  if (layer.inch.border) return voice.phrase('on-base-nearest', { base, least });
  return voice.phrase(reveal.inch.sign < 0 ? 'on-base-turned-over' : 'on-base-turned', { base, least });
}

function sidesNote({ measures, voice }: Setting, base: SafeHtml, layer: Twin<Layer>): SafeHtml {
  const sides = revealsOf(layer);
  if (sides.every(({ inch }) => inch.sign === 0)) return voice.phrase('on-base-flush', { base });
  const reveal = revealPhrase(layer, measures, voice);
  const shows = sides.every(({ inch }) => inch.sign > 0);
  return voice.phrase('on-base', {
    base,
    reveals: shows ? voice.phrase('reveal-shows', { reveal }) : reveal,
  });
}
