/**
 * Everything the commands do, as functions. `docs/api.md` shows them at work.
 *
 * @packageDocumentation
 */

export type { Edition, Editions } from './edition/editions.ts';
export { examine, findingsOf } from './examine/examine.ts';
export type { Study } from './examine/study.ts';
export type { CuttingBench } from './kit/bench.ts';
export { type KitOrder, type KitResult, planKit } from './kit/kit.ts';
export type { Kit, Making, SheetLayout, StockPlan } from './kit/plan.ts';
export { kitCsv } from './kit/report/csv.ts';
export type { Currency } from './kit/report/figures.ts';
export { kitJson } from './kit/report/json.ts';
export { draftText } from './make/draft.ts';
export { Unwritable, type Written } from './make/files.ts';
export { type KitReply, type KitRequest, requestKit } from './make/kit.ts';
export { type KitFilesOptions, makeKitFiles } from './make/kit-files.ts';
export { make } from './make/make.ts';
export type { MakeOptions, MakeProgress, MakeResult, WrittenFor } from './make/make-options.ts';
export { NoSuchProject } from './make/named.ts';
export { requestSeason, type SeasonReply, type SeasonRequest } from './make/season.ts';
export { makeSeasonFiles, type SeasonFilesOptions } from './make/season-files.ts';
export { Length, type Unit } from './measure/length.ts';
export { parseLength, parseSizes, type Reading } from './measure/notation.ts';
export { printInches, printLength, printMillimeters, printSize } from './measure/print.ts';
export type { Size } from './measure/size.ts';
export { openPreview } from './preview/preview.ts';
export type { Preview, PreviewOptions } from './preview/preview-options.ts';
export { BrowserMissing, PrintFault } from './print/fault.ts';
export { openPrinter, type Printer, type PrinterOptions } from './print/printer.ts';
export type { Finding } from './project/finding.ts';
export type { Piece, Project, Site, Step, Workspace } from './project/model.ts';
export type { Stock } from './project/stock.ts';
export { findingsJson, printFindings } from './proof/print.ts';
export { rules } from './proof/rules/index.ts';
export { mergeFindings, tellFinding } from './proof/tell.ts';
export type { Severity, Told } from './proof/told.ts';
export { type PublishResult, publish } from './publish/publish.ts';
export { type Published, unpublished } from './publish/revisions.ts';
export type { Recall, Spot } from './recall/recall.ts';
export { seasonCsv, seasonJson } from './season/report.ts';
export type { Season } from './season/season.ts';
export { buildShapes } from './shape/build.ts';
export { foldNet } from './shape/fold.ts';
export type { FoldedShape } from './shape/folded-shape.ts';
export type { Fold, Net, Panel } from './shape/net.ts';
export type { Layer, Shapes } from './shape/shapes.ts';
export { type Cover, type FaceState, faceStates } from './shape/stacking/face-states.ts';
export { type GlueArea, glueAreas } from './shape/stacking/glue-areas.ts';
export type { GluedFace } from './shape/stacking/glued-face.ts';
export { loadWorkspace, readWorkspaceFromTexts } from './shape/workspace.ts';
