import type { Examination } from '../examine/study.ts';
import { openPress, type Press } from '../print/press.ts';
import type { WorkspaceTexts } from '../project/workspace-texts.ts';
import { mergeTold } from '../proof/told.ts';
import { Recall, type Spot } from '../recall/recall.ts';
import { findInWords } from './find.ts';
import { inParallel } from './in-parallel.ts';
import { withLock } from './lock.ts';
import type { MakeOptions, MakeResult } from './make-options.ts';
import { Making } from './making.ts';
import { projectsNamed } from './named.ts';
import { openPainter, type Painter } from './painter.ts';
import type { Workshop } from './workshop.ts';

/** While the pages and photos of some projects are printed and encoded, others are drawn; with fewer, both cores waited. */
const AT_A_TIME = 6;

/**
 * Proofs a workspace and makes what is no longer as its inputs say. A project with an error keeps its last good output;
 * the others are made.
 * @throws NoSuchProject before anything is done. @throws Unwritable, BrowserMissing or PrintFault, each with a remedy
 * in one line; what was made until then is whole and need not be made again.
 */
export async function make(options: MakeOptions): Promise<MakeResult> {
  const { root, out, namedFrom, progress, known, isOver = () => false } = options;
  const recall = await Recall.open(root, namedFrom, openLate, known);
  const spots = projectsNamed(options.only, recall.spots).filter(isAmong(options));
  return withLock(out, async () => {
    const { browser, endpoints } = options;
    const printer = openPress({ browser, endpoints });
    const painter = openPainter();
    const making = new Making(
      options,
      recall,
      () => openWorkshop(options, recall, printer, painter),
      printer,
    );
    try {
      await making.open();
      progress?.begin(spots.length);
      await inParallel(spots, AT_A_TIME, async (spot) => {
        if (isOver()) return;
        await making.makeProject(spot);
        progress?.passed();
      });
      // The site's own pages are not printed.
      printer.rest();
      if (!options.shard && !known?.changed && !isOver()) await making.makeSite();
      const isWhole = !isOver();
      const { site, shared } = await recall.basisFindings();
      // To know which languages are asked for, every project has to be looked at.
      const inWords = isWhole ? await findInWords(recall, spots) : [];
      const told = [...site, ...shared, ...making.findings, ...inWords];
      const { written, held, made, vanished } = making;
      return {
        recall,
        isWhole,
        spots,
        findings: mergeTold(told),
        written,
        held: [...new Set(held)].sort(),
        made: [...new Set(made)].sort(),
        vanished,
      };
    } finally {
      progress?.end();
      await Promise.all([printer.close(), painter.close()]);
      recall.save();
    }
  });
}

async function openLate(texts: WorkspaceTexts): Promise<Examination> {
  const { openExamination } = await import('../examine/examine.ts');
  return openExamination(texts);
}

/** Of a make in parts, projects are dealt out one by one, so that every part has some of each kind. */
function isAmong({ shard, known }: MakeOptions): (spot: Spot, index: number) => boolean {
  const changed = known?.changed;
  return ({ folder }, index) =>
    (!shard || index % shard.of === shard.part - 1) && (!changed || changed.has(folder));
}

/** What a page is made with is loaded when there is one to make. */
async function openWorkshop(
  options: MakeOptions,
  recall: Recall,
  printer: Press,
  painter: Painter,
): Promise<Workshop> {
  const {
    out,
    pdf,
    onlyPdf,
    pdfsLater = false,
    strict = false,
    progress,
    known,
    isOver = () => false,
  } = options;
  const { Workshop } = await import('./workshop.ts');
  const working = (path: string): void => progress?.working(path);
  return Workshop.open({
    recall,
    printer,
    painter,
    out,
    pdf,
    onlyPdf,
    pdfsLater,
    strict,
    isLeft: ({ mayWait = false }) => isOver() || (mayWait && known?.changed !== undefined),
    working,
  });
}
