import { type Editions, ownEdition } from '../edition/editions.ts';
import type { Download } from '../handout/prints.ts';
import { createRenderer, type Renderer } from '../handout/render.ts';
import type { Printer } from '../print/printer.ts';
import type { Ledger } from '../project/ledger/ledger.ts';
import type { Project, Site } from '../project/model.ts';
import type { KeptPrint } from '../recall/kept.ts';
import type { ListedProject } from '../site/listed.ts';
import type { Labels } from '../words/labels.ts';
import { labelsFor } from '../words/languages.ts';
import type { Job } from './job.ts';
import type { PackageFiles } from './package-files.ts';
import type { Painter } from './painter.ts';
import type { ProjectPicture } from './pictures.ts';
import type { ProjectRecord } from './records.ts';

/** What all outputs may use. */
export type Studio = {
  readonly site: Site;
  readonly files: PackageFiles;
  readonly renderer: Renderer;
  readonly labels: Labels;
  readonly printer: Pick<Printer, 'pdf'>;
  readonly painter: Painter;
  /** Whether PDFs are made; without them, for speed. */
  readonly pdf: boolean;
  /** Whether pages lead to PDFs: those made now, or made once somebody asks for them. */
  readonly offersPdfs: boolean;
};

export type ProjectMaterial = Studio & {
  readonly slug: string;
  readonly editions: Editions;
  /** What was published of it, the state being made included. */
  readonly ledger: Ledger;
  readonly pictures: readonly ProjectPicture[];
  /** The project's folder, absolute. */
  readonly source: string;
  /** What was kept of its earlier revisions. */
  readonly kept: readonly KeptPrint[];
  /** What all outputs together offer. */
  readonly downloads: readonly Download[];
};

export type SiteMaterial = Studio & {
  readonly cards: readonly ListedProject[];
  /** What was made of each project, by its slug. */
  readonly records: readonly (readonly [slug: string, record: ProjectRecord])[];
  /** `YYYY-MM-DD`: what is a session to come changes from day to day, and nothing else. */
  readonly today: string;
};

/** One kind of output. One file each in `outputs/`. */
export type Output = {
  /** The files made of each project. */
  readonly ofProject?: (material: ProjectMaterial) => readonly Job[];
  /** Those that its page leads to; no PDF that will not be there. */
  readonly downloads?: (material: Omit<ProjectMaterial, 'downloads'>) => readonly Download[];
  /** What the site's own pages know of a project; one output says it. */
  readonly card?: (material: ProjectMaterial) => ListedProject;
  /** No page shows them: in a preview they wait until the page of what was saved is there. */
  readonly mayWait?: true;
  /** The files made once for the site. */
  readonly ofSite?: (material: SiteMaterial) => readonly Job[];
};

/** Every kind of output, by the name of its file. */
export type Outputs = Readonly<Record<string, Output>>;

/** Sets up what every output uses: settings, templates, words and printer. */
export function openStudio(
  site: Site,
  files: PackageFiles,
  { printer, painter }: Pick<Studio, 'printer' | 'painter'>,
  { pdf, pdfsLater = false }: { readonly pdf: boolean; readonly pdfsLater?: boolean | undefined },
): Studio {
  const { labels } = labelsFor(files.labels, site.language);
  const offersPdfs = pdf || pdfsLater;
  return { site, files, printer, painter, pdf, offersPdfs, labels, renderer: rendererOf(files) };
}

const renderers = new WeakMap<PackageFiles, Renderer>();

/** Templates are compiled once. */
function rendererOf(files: PackageFiles): Renderer {
  const renderer = renderers.get(files) ?? createRenderer(files);
  renderers.set(files, renderer);
  return renderer;
}

/** The day a project without a session is dated: any fixed one, so that the same sources give the same bytes. */
const UNDATED = '2000-01-01';

/** The day that stands in a project's PDFs as the day they were made: its last revision's or its session's, never the clock's. */
export function dayOf({ editions, ledger }: ProjectMaterial): string {
  return ledger.revisions.at(-1)?.date ?? dayOfProject(ownEdition(editions).project);
}

/** As `dayOf`, for what revisions do not concern: the kit of one session. */
export function dayOfProject({ session }: Project): string {
  return session?.value ?? UNDATED;
}
