import type { Study } from '../examine/study.ts';
import type { Ledger } from '../project/ledger/ledger.ts';
import type { Told } from '../proof/told.ts';
import type { Known, Recall, Spot } from '../recall/recall.ts';
import type { Written } from './files.ts';

/** What happened to a file that was made, and the inputs that are another than the last time. */
export type WrittenFor = Written & { readonly why: readonly string[] };

/** Told what a make is at. */
export type MakeProgress = {
  readonly begin: (projects: number) => void;
  /** Before each file that is made. */
  readonly working: (path: string) => void;
  /** After each file that was made, new or not. */
  readonly wrote: (written: WrittenFor) => void;
  /** After each project. */
  readonly passed: () => void;
  readonly end: () => void;
};

export type MakeOptions = {
  /** The workspace's folder and the output folder, absolute. */
  readonly root: string;
  readonly out: string;
  /** The folder that paths in messages are relative to. */
  readonly namedFrom: string;
  /** Only the projects with these slugs; else all. */
  readonly only?: readonly string[] | undefined;
  /** What is known of the workspace from an earlier make. Where it names the folders that changed, only they are looked at. */
  readonly known?: Known | undefined;
  /** Make everything again, whatever was made before. */
  readonly all?: boolean | undefined;
  readonly pdf: boolean;
  /** The one PDF to print, below the output folder, `site/card/card-letter.pdf`; else all. */
  readonly onlyPdf?: string | undefined;
  /** PDFs that are left out now are made once somebody asks for them: pages lead to them all the same. */
  readonly pdfsLater?: boolean | undefined;
  /** Asked before each project and each kind of output whether to stop there: what is left is due the next time. */
  readonly isOver?: (() => boolean) | undefined;
  /** Warnings stop a project as errors do. */
  readonly strict?: boolean | undefined;
  /** One part of all projects, `{ part: 2, of: 5 }`, and nothing of the site's own pages: to be laid together with the others. */
  readonly shard?: { readonly part: number; readonly of: number } | undefined;
  /** The browser's program, if one is named. */
  readonly browser?: string | undefined;
  /** Browsers that run elsewhere, by the addresses of their web sockets. */
  readonly endpoints?: readonly string[] | undefined;
  /** The day the site is made, `YYYY-MM-DD`: sessions from it on are to come. */
  readonly today: string;
  readonly progress?: MakeProgress | undefined;
  /** The ledger to make a project with, where it is not the one on disk: one with a revision about to be published. */
  readonly ledgerOf?: ((study: Study) => Ledger | undefined) | undefined;
  /** Records that ledger. Asked for once all of the project is made, before any of it is put in place. */
  readonly record?: ((folder: string, ledger: Ledger) => Promise<void>) | undefined;
};

export type MakeResult = {
  /** The workspace, with all that is known of it. */
  readonly recall: Recall;
  /** Whether it went through to its end, not stopped before. */
  readonly isWhole: boolean;
  /** The projects that were looked at. */
  readonly spots: readonly Spot[];
  /** Of the settings, the shared files and those projects; of a make that was stopped, as far as it went. */
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
