import type { Editions } from '../edition/editions.ts';
import type { Renderer } from '../handout/render.ts';
import type { Printer } from '../print/printer.ts';
import type { Ledger } from '../project/ledger.ts';
import type { Site } from '../project/model.ts';
import type { Labels } from '../words/labels.ts';
import type { PackageFiles } from './package-files.ts';
import type { ProjectPicture } from './pictures.ts';
import type { Card } from './record.ts';

/** One file to be made. */
export type Job = {
  /** Below the output folder, with `/` between: `site/seed-keeper/index.html`. */
  readonly path: string;
  /**
   * Everything its bytes follow from, where making it is slow: when this is what it was last time and the file is
   * still there untouched, it is not made again.
   */
  readonly from?: string;
  readonly produce: () => Promise<Uint8Array> | Uint8Array | string;
};

/** What all outputs may use. */
export type Studio = {
  readonly site: Site;
  readonly files: PackageFiles;
  readonly renderer: Renderer;
  readonly labels: Labels;
  readonly printer: Printer;
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
};

export type SiteMaterial = Studio & {
  readonly cards: readonly Card[];
  /** `YYYY-MM-DD`: what is a session to come changes from day to day, and nothing else. */
  readonly today: string;
};

/** One kind of output. One file each in `outputs/`. */
export type Output = {
  readonly id: string;
  /** The files made of each project. */
  readonly ofProject?: (material: ProjectMaterial) => readonly Job[] | Promise<readonly Job[]>;
  /** The files made once for the site. */
  readonly ofSite?: (material: SiteMaterial) => readonly Job[] | Promise<readonly Job[]>;
};
