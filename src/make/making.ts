import { browserDigest } from '../print/browser-digest.ts';
import type { Press } from '../print/press.ts';
import type { Ledger } from '../project/ledger/ledger.ts';
import { digestOf } from '../project/source.ts';
import { isFailure, type Told } from '../proof/told.ts';
import { templatesDigest } from '../recall/program.ts';
import type { Recall, Spot } from '../recall/recall.ts';
import type { ListedProject } from '../site/listed.ts';
import { keepOnly, photoOf, picturesFolder, putFiles, removeFiles } from './files.ts';
import type { MakeOptions, WrittenFor } from './make-options.ts';
import { Mishaps } from './mishaps.ts';
import type { EverythingIs, Performance } from './perform.ts';
import {
  filesIn,
  type MadeOutput,
  type MadeRecord,
  type ProjectRecord,
  photosIn,
  printedIn,
  Records,
} from './records.ts';
import { findStale, type Stale } from './stale.ts';
import type { Workshop } from './workshop.ts';

/** One make in one output folder: what is stale of each project, then of the site's own pages. */
export class Making {
  readonly findings: Told[] = [];
  readonly written: WrittenFor[] = [];
  readonly held: string[] = [];
  readonly made: string[] = [];
  /** Slugs that had a page, and now have neither one nor a project that says it was there. */
  vanished: readonly string[] = [];
  readonly #options: MakeOptions;
  readonly #recall: Recall;
  readonly #records: Records;
  readonly #openWorkshop: () => Promise<Workshop>;
  readonly #printer: Pick<Press, 'warmUp'>;
  #workshop: Promise<Workshop> | undefined;
  readonly #mishaps: Mishaps;

  /** @param openWorkshop Asked for a workshop once there is something to make. @param printer Of that workshop. */
  constructor(
    options: MakeOptions,
    recall: Recall,
    openWorkshop: () => Promise<Workshop>,
    printer: Pick<Press, 'warmUp'>,
  ) {
    this.#options = options;
    this.#openWorkshop = openWorkshop;
    this.#printer = printer;
    this.#recall = recall;
    this.#records = new Records(options.out);
    this.#mishaps = new Mishaps(recall);
    const { pdf, onlyPdf, pdfsLater = false, today } = options;
    const values = {
      templates: templatesDigest(),
      pdf: onlyPdf ?? `${pdf}`,
      offered: `${pdf || pdfsLater}`,
      today,
    };
    for (const [name, value] of Object.entries(values)) recall.inputs.set(name, value);
  }

  /** Removes what was made of projects that are gone, and finds which browser would print. */
  async open(): Promise<void> {
    const { pdf, browser, endpoints } = this.#options;
    const { inputs, stamps } = this.#recall;
    if (pdf)
      inputs.set('browser', await browserDigest({ browser, endpoints }, (path) => stamps.digestOf(path)));
    const gone: string[] = [];
    const slugs = new Set(this.#recall.spots.map(({ slug }) => slug));
    for (const slug of this.#records.slugs) {
      if (slugs.has(slug)) continue;
      await removeFiles(this.#options.out, Object.keys(filesIn(this.#records.project(slug))));
      this.#records.forgetProject(slug);
      gone.push(slug);
    }
    this.vanished = gone;
  }

  /**
   * Makes what is stale of a project; one with an error, or that something breaks on, keeps its last good output.
   * @throws when the environment is at fault, which would hold the others just as well.
   */
  async makeProject(spot: Spot): Promise<void> {
    try {
      const isMade = await this.#makeOrHold(spot);
      (isMade ? this.made : this.held).push(spot.slug);
    } catch (error) {
      this.findings.push(...(await this.#mishaps.tell(error, spot)));
      this.held.push(spot.slug);
    }
    this.#recall.release(spot);
  }

  async #makeOrHold(spot: Spot): Promise<boolean> {
    const { strict = false } = this.#options;
    const { slug } = spot;
    const before = this.#records.project(slug);
    this.#foresee(spot, before);
    const found = await this.#recall.findings(spot);
    const { site } = await this.#recall.basisFindings();
    for (const each of found) this.findings.push(each);
    return !isFailure([...site, ...found], strict) && (await this.#renew(spot, before));
  }

  /**
   * Starts the browser while a project is examined, if it is likely to be printed then. Only one that is there already:
   * none is downloaded for a project that may have errors. Whether it serves the first page tells.
   */
  #foresee(spot: Spot, before: ProjectRecord | undefined): void {
    const { inputs } = this.#recall;
    if (
      !this.#options.pdf ||
      inputs.digest('', 'browser') === '' ||
      this.#recall.forgotten([spot]).length === 0
    )
      return;
    const changed = new Set(before && inputs.changed(spot.folder, before.inputs));
    const isPrinted = ([, { uses }]: MadeOutput): boolean => uses.some((input) => changed.has(input));
    if (!before || printedIn(before).some(isPrinted)) this.#printer.warmUp();
  }

  /** Whether a project is now as its sources say; its pictures may hold it. */
  async #renew(spot: Spot, before: ProjectRecord | undefined): Promise<boolean> {
    const { slug, folder } = spot;
    const ledger = await this.#ledgerOf(spot);
    const stale = this.#staleOf(before, folder);
    if (before && typeof stale !== 'string' && stale.size === 0) {
      await this.#record(folder, ledger);
      return true;
    }
    const isStale = ([name]: MadeOutput): boolean => typeof stale === 'string' || stale.has(name);
    if (this.#options.pdf && (!before || printedIn(before).some(isStale))) this.#printer.warmUp();
    const workshop = await this.#open();
    const { findings, made } = await workshop.makeProject(spot, { before, stale }, ledger);
    for (const each of findings) this.findings.push(each);
    if (!made) return false;
    if (made.files.some(({ path }) => path.endsWith('.pdf'))) this.#mishaps.notePrinted();
    // Of a site without its ledger nothing would tell what it shows; a ledger without its site has it made the next time.
    await this.#record(folder, ledger);
    await this.#put(made);
    this.#records.putProject(slug, made.record);
    return true;
  }

  /** Makes what is stale of the site's own pages, and forgets pictures that none shows any more. */
  async makeSite(): Promise<void> {
    const records = this.#records;
    const known = this.#allKnown();
    const made = known.flatMap(([slug, { card }]) => (card === undefined ? [] : [{ slug, card }]));
    await this.#findLedOn(made);
    const photos = new Set(known.flatMap(([, record]) => photosIn(record)));
    await keepOnly(picturesFolder(this.#options.out), (name) => photos.has(photoOf(name)));
    const { inputs } = this.#recall;
    inputs.set('cards', digestOf(made.map(({ card }) => JSON.stringify(card))));
    inputs.set('records', digestOf(made.map(({ slug }) => `${slug} ${records.digestOf(slug)}`)));
    const before = records.site();
    const stale = this.#staleOf(before, '');
    if (before && typeof stale !== 'string' && stale.size === 0) return;
    const cards = await readCards(made);
    const doubtful = made.filter((_, index) => !cards[index]).map(({ slug }) => slug);
    if (doubtful.length > 0) {
      await this.#makeAnew(doubtful);
      return this.makeSite();
    }
    const workshop = await this.#open();
    const { today } = this.#options;
    const performance = await workshop.makeSite(
      { before, stale },
      {
        cards: cards.flatMap((card) => card ?? []),
        records: known,
        today,
      },
    );
    await this.#put(performance);
    records.putSite(performance.record);
  }

  /** Of each project of the workspace that something was made of, in order. */
  #allKnown(): readonly (readonly [slug: string, record: ProjectRecord])[] {
    return [...new Set(this.#recall.spots.map(({ slug }) => slug))].flatMap((slug) => {
      const record = this.#records.project(slug);
      return record ? [[slug, record] as const] : [];
    });
  }

  /** What a record says of a project that is not as we write it counts as nothing made. */
  async #makeAnew(slugs: readonly string[]): Promise<void> {
    for (const spot of this.#recall.spots.filter(({ slug }) => slugs.includes(slug))) {
      this.#records.forgetProject(spot.slug);
      await this.makeProject(spot);
    }
  }

  /** An address that a project says it had before leads on. */
  async #findLedOn(made: readonly Card[]): Promise<void> {
    if (this.vanished.length === 0) return;
    const was = new Set((await readCards(made)).flatMap((card) => card?.was ?? []));
    this.vanished = this.vanished.filter((slug) => !was.has(slug));
  }

  #staleOf(before: MadeRecord | undefined, folder: string): Stale | EverythingIs {
    const { out, all = false } = this.#options;
    if (!before) return 'new';
    return all ? 'asked for' : findStale(before, folder, this.#recall, out);
  }

  async #record(folder: string, ledger: Ledger | undefined): Promise<void> {
    if (ledger) await this.#options.record?.(folder, ledger);
  }

  /** The ledger a project is to be made with, where it is not the one on disk. */
  async #ledgerOf(spot: Spot): Promise<Ledger | undefined> {
    const { ledgerOf } = this.#options;
    const ledger = ledgerOf?.(await this.#recall.study(spot));
    if (!ledger) return undefined;
    const { ledgerText } = await import('../project/ledger/ledger-format.ts');
    this.#recall.inputs.setOf(spot.folder, 'ledger', digestOf([ledgerText(ledger)]));
    return ledger;
  }

  async #put({ files, gone }: Performance): Promise<void> {
    const { out, progress } = this.#options;
    const why = new Map(files.map((file) => [file.path, file.why]));
    for (const each of await putFiles(out, files)) {
      const written = { ...each, why: why.get(each.path) ?? [] };
      this.written.push(written);
      progress?.wrote(written);
    }
    await removeFiles(out, gone);
  }

  #open(): Promise<Workshop> {
    this.#workshop ??= this.#openWorkshop();
    return this.#workshop;
  }
}

type Card = { readonly slug: string; readonly card: unknown };

/** Each that is as we write them, in the same order; loaded late, since most makes look at none. */
async function readCards(made: readonly Card[]): Promise<readonly (ListedProject | undefined)[]> {
  const { readCard } = await import('./card-format.ts');
  return made.map(({ slug, card }) => readCard(card, slug));
}
