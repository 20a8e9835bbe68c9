import { mergeTold, type Told } from '../proof/told.ts';
import { Recall, type Spot } from '../recall/recall.ts';
import { findInWords } from './find.ts';
import { inParallel } from './in-parallel.ts';
import { withLock } from './lock.ts';
import type { MakeOptions, WrittenFor } from './make-options.ts';
import { Making } from './making.ts';
import { projectsNamed } from './named.ts';
import type { Workshop } from './workshop.ts';

export type MakeResult = {
  /** The workspace, with all that is known of it. */
  readonly recall: Recall;
  /** The projects that were looked at. */
  readonly spots: readonly Spot[];
  /** Of the settings, the shared files and those projects. */
  readonly findings: readonly Told[];
  /** What happened to each file that was made. */
  readonly written: readonly WrittenFor[];
  /** Slugs of projects that keep their last good output because of a finding. */
  readonly held: readonly string[];
  /** Addresses that were there before and now lead nowhere. */
  readonly vanished: readonly string[];
  /** Slugs of the projects that are now as their sources say. */
  readonly made: readonly string[];
};

/** While a page of one project is printed, others are drawn. */
const AT_A_TIME = 3;

/**
 * Proofs a workspace and makes what is no longer as its inputs say. A project with an error keeps its last good output;
 * the others are made.
 * @throws NoSuchProject before anything is done. @throws Unwritable, BrowserMissing or PrintFault, each with a remedy
 * in one line; what was made until then is whole and need not be made again.
 */
export async function make(options: MakeOptions): Promise<MakeResult> {
  const { root, out, namedFrom, progress } = options;
  const recall = await Recall.open(root, namedFrom, async (texts) => {
    const { openExamination } = await import('../examine/examine.ts');
    return openExamination(texts);
  });
  const spots = projectsNamed(options.only, recall.spots).filter(isInShard(options));
  return withLock(out, async () => {
    const making = new Making(options, recall, () => openWorkshop(options, recall));
    try {
      await making.open();
      progress?.begin(spots.length);
      await inParallel(spots, AT_A_TIME, async (spot) => {
        await making.makeProject(spot);
        progress?.passed();
      });
      if (!options.shard) await making.makeSite();
      const { site, shared } = await recall.basisFindings();
      const told = [...site, ...shared, ...making.findings, ...(await findInWords(recall, spots))];
      const { written, held, made, vanished } = making;
      return {
        recall,
        spots,
        findings: mergeTold(told),
        written,
        held: held.sort(),
        made: made.sort(),
        vanished,
      };
    } finally {
      progress?.end();
      await making.close();
      recall.save();
    }
  });
}

/** Projects are dealt out one by one, so that every part has some of each kind. */
function isInShard({ shard }: MakeOptions): (spot: Spot, index: number) => boolean {
  return (_, index) => !shard || index % shard.of === shard.part - 1;
}

/** What a page is made with is loaded when there is one to make. */
async function openWorkshop(options: MakeOptions, recall: Recall): Promise<Workshop> {
  const { out, pdf, pdfsLater = false, strict = false, browser, endpoints, progress } = options;
  const { Workshop } = await import('./workshop.ts');
  const working = (path: string): void => progress?.working(path);
  return Workshop.open({ recall, printer: { browser, endpoints }, out, pdf, pdfsLater, strict, working });
}
