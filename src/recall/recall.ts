import type { Examination, Study } from '../examine/study.ts';
import { compare } from '../measure/numbers.ts';
import { loadTexts } from '../project/load.ts';
import type { Commons } from '../project/model.ts';
import { slugOf } from '../project/slug.ts';
import { type At, digestOf, type SourceFile } from '../project/source.ts';
import { sheetFolders, type WorkspaceTexts } from '../project/workspace-texts.ts';
import type { Told } from '../proof/told.ts';
import { type Found, foundIn, type Worked } from './found.ts';
import { Inputs, type Trace } from './inputs.ts';
import type { Pack } from './pack.ts';
import { openPacks, type Packs } from './packs.ts';
import { programDigest } from './program.ts';
import { Stamps } from './stamps.ts';
import { readTold, type ToldData, writeTold } from './told-data.ts';

/** A project that is there, before it is read. */
export type Spot = { readonly slug: string; readonly folder: string; readonly file: SourceFile };

/** Something worked out of a project, as data that JSON can hold, and the inputs it followed from beside the study's. */
export type Work<T> = (
  study: Study,
  commons: Commons,
) => Promise<{ readonly data: T; readonly uses: Iterable<string> }>;

/** What is known already: all of it still holds but, where folders are named, the texts in them. */
export type Known = { readonly recall: Recall; readonly changed?: ReadonlySet<string> | undefined };

/** Reads a workspace and examines its projects; nothing of that is loaded before it is asked for. */
type Read = (texts: WorkspaceTexts) => Promise<Examination>;

type Kept = { readonly from: Trace; readonly data: unknown };

const FOUND = 'found';

/** What was found in the settings and the shared files, and what each of their values is. */
type Basis = {
  readonly values: Trace;
  readonly site: Found;
  readonly shared: readonly ToldData[];
};

/**
 * A workspace of which nothing is worked out twice: what follows from a project is kept in the user's cache, with the
 * digest of every input it followed from, and is worked out again when one of them is another.
 */
export class Recall {
  readonly texts: WorkspaceTexts;
  /** Every project, in the order of their slugs. */
  readonly spots: readonly Spot[];
  readonly inputs: Inputs;
  readonly stamps: Stamps;
  readonly #pack: Pack;
  readonly #stampPack: Pack;
  readonly #read: Read;
  readonly #files: ReadonlyMap<string, SourceFile>;
  #reading: Promise<Examination> | undefined;
  /** What was found to hold still, which it does as long as this lasts. */
  readonly #holding = new Map<string, Kept>();
  /** Of the projects that are worked on now. */
  readonly #studies = new Map<string, Study>();

  private constructor(texts: WorkspaceTexts, read: Read, [pack, stampPack]: Packs) {
    this.texts = texts;
    this.spots = spotsIn(texts);
    this.#read = read;
    this.#pack = pack;
    this.#stampPack = stampPack;
    this.#files = new Map([...texts.files.values()].flatMap((file) => (file ? [[file.path, file]] : [])));
    this.stamps = new Stamps(stampPack);
    this.inputs = new Inputs(texts, this.stamps);
  }

  /**
   * @param read Reads projects, where something is to be worked out.
   * @param known Of the same workspace, seen from the same folder.
   * @throws when `root` is no folder that can be read.
   */
  static async open(root: string, namedFrom: string, read: Read, known?: Known): Promise<Recall> {
    const changed = known?.changed;
    const earlier = changed && { texts: known.recall.texts, changed };
    const texts = await loadTexts(root, { namedFrom, earlier });
    const recall = new Recall(texts, read, known ? known.recall.#packs : openPacks(texts.root, namedFrom));
    const { values } = await recall.#basis();
    const inputs = { ...values, program: programDigest() };
    for (const [input, digest] of Object.entries(inputs)) recall.inputs.set(input, digest);
    return recall;
  }

  get #packs(): Packs {
    return [this.#pack, this.#stampPack];
  }

  /** What was found in the settings, and in the shared files. */
  async basisFindings(): Promise<Readonly<Record<'site' | 'shared', readonly Told[]>>> {
    const { site, shared } = await this.#basis();
    return { site: this.#told(site.findings), shared: this.#told(shared) };
  }

  /** What was found in a project. */
  async findings({ folder }: Spot): Promise<readonly Told[]> {
    return this.#told((await this.#found(folder)).findings);
  }

  /** The languages that are asked for, the site's first. */
  async languages(spots: readonly Spot[]): Promise<readonly At<string>[]> {
    const { site } = await this.#basis();
    const asked = [this.#languageIn(this.texts.files.get('site.yaml'), site)];
    for (const { folder, file } of spots) asked.push(this.#languageIn(file, await this.#found(folder)));
    return asked.flat();
  }

  /** What was found in the words of these languages; `tell` finds it. */
  async languageFindings(
    asked: readonly At<string>[],
    templates: string,
    tell: () => Promise<readonly Told[]>,
  ): Promise<readonly Told[]> {
    if (asked.length === 0) return [];
    const places = asked.map(({ value, at }) => [value, at.file.path, at.start, at.end]);
    const from = { languages: digestOf([templates, JSON.stringify(places)]) };
    const kept = this.#pack.get('languages') as Kept | undefined;
    if (kept?.from.languages === from.languages) return this.#told(kept.data as readonly ToldData[]);
    const told = await tell();
    this.#pack.set('languages', { from, data: told.map(writeTold) } satisfies Kept);
    return told;
  }

  /** A project, read and examined now. */
  async study({ folder }: Pick<Spot, 'folder'>): Promise<Study> {
    const { study: read } = await this.#open();
    const study = this.#studies.get(folder) ?? read(folder);
    this.#studies.set(folder, study);
    return study;
  }

  /** Lets go of a project that is done with. */
  release({ folder }: Pick<Spot, 'folder'>): void {
    this.#studies.delete(folder);
  }

  /** What the projects have in common. */
  async commons(): Promise<Commons> {
    return (await this.#open()).commons;
  }

  /** Something that follows from a project: what is kept of it, or worked out now. */
  async work<T>(name: string, { folder }: Pick<Spot, 'folder'>, work: Work<T>): Promise<T> {
    const kept = this.#kept(name, folder);
    if (kept) return kept.data as T;
    const study = await this.study({ folder });
    const { data, uses } = await work(study, await this.commons());
    this.#keep(name, folder, { data, uses: [...study.uses, ...uses] });
    return data;
  }

  /** Those of which it is not known what is found in them. */
  forgotten(spots: readonly Spot[]): readonly Spot[] {
    return spots.filter(({ folder }) => !this.#kept(FOUND, folder));
  }

  /** Takes what somebody else found in a project, in these very texts. */
  keepFound({ folder }: Pick<Spot, 'folder'>, found: Worked<Found>): void {
    this.#keep(FOUND, folder, found);
  }

  /** Keeps what was worked out for the next time, and forgets what is of projects that are gone. */
  save(): void {
    const folders = new Set(this.spots.map(({ folder }) => folder));
    this.#pack.keep((key) => !key.includes('/') || folders.has(key.slice(key.indexOf('/') + 1)));
    this.#pack.save();
    this.#stampPack.save();
  }

  /** What is kept of a project and still holds. */
  #kept(name: string, folder: string): Kept | undefined {
    const key = `${name}/${folder}`;
    const holding = this.#holding.get(key);
    if (holding) return holding;
    const kept = this.#pack.get(key) as Kept | undefined;
    if (!kept || this.inputs.changed(folder, kept.from).length > 0) return undefined;
    this.#holding.set(key, kept);
    return kept;
  }

  #keep(name: string, folder: string, { data, uses }: Worked<unknown>): void {
    const from = this.inputs.trace(folder, ['sheet', 'revisions', ...uses]);
    const kept: Kept = { from, data };
    this.#pack.set(`${name}/${folder}`, kept);
    this.#holding.set(`${name}/${folder}`, kept);
  }

  #open(): Promise<Examination> {
    this.#reading ??= this.#read(this.texts);
    return this.#reading;
  }

  #found(folder: string): Promise<Found> {
    return this.work(FOUND, { folder }, async (study) => foundIn(this.texts, await this.#open(), study));
  }

  async #basis(): Promise<Basis> {
    const kept = this.#pack.get('basis') as Kept | undefined;
    if (kept && this.inputs.changed('', kept.from).length === 0) return kept.data as Basis;
    const { commons, values, tell } = await this.#open();
    const { language, languageAt, font, findings } = commons.site;
    const fonts = font ? [`font ${font.path}`] : [];
    const from = this.inputs.trace('', ['site', 'shared', ...fonts]);
    const asked = languageAt && { language: [language, languageAt.start, languageAt.end] as const };
    const data: Basis = {
      // A font is what its file is.
      values: { ...values, ...(font && { 'site.font': digestOf([font.path, font.digest]) }) },
      site: { findings: tell(findings).map(writeTold), ...asked },
      shared: tell(commons.findings).map(writeTold),
    };
    this.#pack.set('basis', { from, data } satisfies Kept);
    return data;
  }

  #languageIn(file: SourceFile | undefined, { language }: Found): readonly At<string>[] {
    if (!file || !language) return [];
    const [value, start, end] = language;
    return [{ value, at: { file, start, end } }];
  }

  #told(findings: readonly ToldData[]): readonly Told[] {
    return findings.map((each) => readTold(each, this.#files));
  }
}

function spotsIn(texts: WorkspaceTexts): readonly Spot[] {
  const spots = sheetFolders(texts).flatMap((folder): Spot[] => {
    const file = texts.files.get(`${folder}/sheet.md`);
    return file ? [{ slug: slugOf(folder), folder, file }] : [];
  });
  return spots.sort((a, b) => compare(a.slug, b.slug) || compare(a.folder, b.folder));
}
