import { join } from 'node:path';
import type { Study } from '../examine/study.ts';
import type { Download } from '../handout/prints.ts';
import type { Press } from '../print/press.ts';
import type { Ledger } from '../project/ledger/ledger.ts';
import type { Site } from '../project/model.ts';
import { watchSite } from '../project/reading/read-site.ts';
import { type Note, watchProperties } from '../project/watch.ts';
import { tellFinding } from '../proof/tell.ts';
import { isFailure, type Told } from '../proof/told.ts';
import { findKept } from '../recall/kept.ts';
import type { Recall, Spot } from '../recall/recall.ts';
import { sha256 } from '../recall/sealed.ts';
import type { ListedProject } from '../site/listed.ts';
import { cardCodec } from './card-format.ts';
import { picturesFolder } from './files.ts';
import { labelsOf } from './languages.ts';
import { openStudio, type ProjectMaterial, type SiteMaterial, type Studio } from './output.ts';
import { outputs } from './outputs/index.ts';
import { filesFor } from './package-files.ts';
import type { Painter } from './painter.ts';
import { type OutputKind, type Performance, perform, type Task, type Workplace } from './perform.ts';
import { type ProjectPicture, readPictures } from './pictures.ts';
import type { ProjectRecord } from './records.ts';

type WorkshopOptions = Omit<Workplace, 'inputs' | 'stamps'> & {
  readonly recall: Recall;
  readonly printer: Press;
  readonly painter: Painter;
  readonly pdfsLater: boolean;
  /** Whether warnings hold a project as errors do. */
  readonly strict: boolean;
};

/** What was made of a project, or that it is held because of its pictures. */
type ProjectMade = {
  readonly findings: readonly Told[];
  readonly made?: Performance & { readonly record: ProjectRecord };
};

type Earlier = Pick<Task, 'stale'> & { readonly before: ProjectRecord | undefined };

/** Where outputs are made: opened once there is something to make. */
export class Workshop {
  readonly #options: WorkshopOptions;
  readonly #bench: Workplace;
  readonly #studio: Studio;
  /** One picture at a time: encoding it takes every core and a lot of memory. */
  #turn: Promise<unknown> = Promise.resolve();

  private constructor(options: WorkshopOptions, site: Site) {
    const { recall } = options;
    this.#options = options;
    this.#bench = { ...options, inputs: recall.inputs, stamps: recall.stamps };
    this.#studio = openStudio(site, filesFor(site), options, options);
  }

  static async open(options: WorkshopOptions): Promise<Workshop> {
    const { site } = await options.recall.commons();
    return new Workshop(options, site);
  }

  /** Makes what is stale of a project. What it is made from, its photos and pages, is held no longer than it takes. */
  async makeProject(spot: Spot, earlier: Earlier, ledger: Ledger | undefined): Promise<ProjectMade> {
    const { recall, out, strict, painter } = this.#options;
    const { folder, file } = spot;
    const study = await recall.study(spot);
    const source = join(recall.texts.root, folder);
    // A photo that changes while it is read must not count as seen.
    for (const name of study.uses) recall.inputs.digest(folder, name.replace(/^picture /u, 'photo '));
    const shown = await this.#inTurn(() => readPictures(source, study.project, picturesFolder(out), painter));
    const findings = shown.findings.map((finding) => tellFinding(finding));
    if (isFailure(findings, strict)) return { findings };
    const { material, kinds } = this.#kindsOf(study, ledger ?? study.project.ledger, shown.pictures);
    const { record, ...made } = await perform({ ...earlier, folder, kinds }, this.#bench);
    const [card] = Object.values(outputs).flatMap((output) => output.card?.(material) ?? []);
    const whole = {
      source: `${folder}/sheet.md`,
      sha256: sha256(file.text),
      card: card && cardCodec.encode(card),
      ...record,
    };
    return { findings, made: { ...made, record: whole } };
  }

  /** Makes what is stale of the site's own pages. @param made What was made of the projects; `cards` are in their records. */
  makeSite(
    earlier: Pick<Task, 'before' | 'stale'>,
    made: {
      readonly cards: readonly ListedProject[];
      readonly records: SiteMaterial['records'];
      readonly today: string;
    },
  ): Promise<Performance> {
    const material: SiteMaterial = { ...this.#studio, ...made };
    const kinds = Object.entries(outputs).flatMap(([name, { ofSite }]) =>
      ofSite ? [{ name, jobsOf: (note: Note) => ofSite(watched(material, BEHIND_SITE, note)) }] : [],
    );
    return perform({ ...earlier, folder: '', kinds }, this.#bench);
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = this.#turn.then(work);
    this.#turn = result.catch(() => {});
    return result;
  }

  #kindsOf(
    study: Study,
    ledger: Ledger,
    pictures: readonly ProjectPicture[],
  ): { readonly material: ProjectMaterial; readonly kinds: Task['kinds'] } {
    const { site, files } = this.#studio;
    const labels = labelsOf(study.project, site, files.labels);
    const { slug } = study.project;
    const { texts } = this.#options.recall;
    const { folder } = study.project;
    const earlier = ledger.revisions.slice(0, -1).map(({ number }) => number);
    const bare = {
      ...this.#studio,
      labels,
      slug,
      editions: study.editions,
      ledger,
      pictures,
      source: join(texts.root, folder),
      kept: earlier.flatMap((number) => findKept(texts, folder, number)),
      downloads: [],
    };
    const behind = behindProject(study, pictures, earlier);
    const offered = new Set<string>();
    const downloads = Object.values(outputs).flatMap(
      (output) => output.downloads?.(watched(bare, behind, (input) => offered.add(input))) ?? [],
    );
    const material = { ...bare, downloads: putPaperFirst(downloads) };
    const behindAll = { ...behind, downloads: [...offered] };
    const kinds = Object.entries(outputs).flatMap(([name, { ofProject, mayWait }]): OutputKind[] =>
      ofProject
        ? [{ name, mayWait, jobsOf: (note: Note) => ofProject(watched(material, behindAll, note)) }]
        : [],
    );
    return { material, kinds };
  }
}

/** The inputs behind each thing that outputs are made from. */
type Behind = Readonly<Partial<Record<string, readonly string[]>>>;

const BEHIND_LABELS = ['templates', 'site.language'];

/** Behind what all outputs share. */
const BEHIND_STUDIO: Behind = {
  files: ['templates', 'site.font'],
  renderer: ['templates'],
  labels: BEHIND_LABELS,
  pdf: ['pdf'],
  offersPdfs: ['offered'],
};

const BEHIND_SITE: Behind = {
  ...BEHIND_STUDIO,
  cards: ['cards'],
  records: ['records'],
  today: ['today'],
};

function behindProject(
  study: Study,
  pictures: readonly ProjectPicture[],
  earlier: readonly number[],
): Behind {
  // An edition keeps the numbers that were published.
  const studied = ['sheet', 'ledger', ...study.uses];
  return {
    ...BEHIND_STUDIO,
    labels: [...BEHIND_LABELS, ...studied],
    editions: studied,
    ledger: ['ledger'],
    kept: ['ledger', ...earlier.map((number) => `kept ${number}`)],
    pictures: [...studied, ...pictures.map(({ path }) => `photo ${path}`)],
  };
}

/** What outputs are made from, telling the inputs behind all that they take of it. */
function watched<T extends Studio>(material: T, behind: Behind, note: Note): T {
  const site = watchSite(material.site, note);
  const noteBehind: Note = (key) => {
    for (const input of behind[key] ?? []) note(input);
  };
  return watchProperties({ ...material, site }, (key) => key, noteBehind);
}

/** Most people come for what is printed; what a machine reads follows. */
function putPaperFirst(downloads: readonly Download[]): readonly Download[] {
  return [...downloads.filter(({ listed }) => listed), ...downloads.filter(({ listed }) => !listed)];
}
