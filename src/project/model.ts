import type { Root, RootContent } from 'mdast';
import type { Length, Unit } from '../measure/length.ts';
import type { Units } from '../measure/ruler-unit.ts';
import type { RoundedCorners } from './corners.ts';
import type { ImpressionAsWritten, PunchedEdge } from './decoration.ts';
import type { Finding } from './finding.ts';
import type { Font } from './font-file.ts';
import type { FormAsWritten } from './grammar/form-grammar.ts';
import type { OutlineAsWritten } from './grammar/outline-grammar.ts';
import type { Shared } from './grammar/reader.ts';
import type { Ledger, SettledNumbers } from './ledger/ledger.ts';
import type { NetAsWritten } from './net-as-written.ts';
import type { OpeningAsWritten } from './opening.ts';
import type { Pricing } from './pricing.ts';
import type { Reference } from './prose/reference.ts';
import type { Ref } from './ref.ts';
import type { Schedule } from './schedule.ts';
import type { AtSize, AtVolume, Placement } from './sizes-as-written.ts';
import type { At, Place, SourceFile } from './source.ts';
import type { Stock } from './stock.ts';
import type { Supply } from './supply.ts';

/** A page elsewhere, http or https only, and what it is called. */
export type NamedLink = { readonly name: string; readonly href: string };

/** Where and with whom a session is, and what people may do with the sheets. */
type MeetingAsWritten = {
  readonly place?: At<string>;
  readonly host?: At<string>;
  readonly contact?: At<string>;
  readonly links: readonly NamedLink[];
  readonly terms?: At<string>;
};

export type Piece = {
  readonly id: At<string>;
  /** What it is called on paper, if not by its id. */
  readonly name?: At<string>;
  readonly stock?: At<string>;
  readonly body: PieceBody;
  /** The value of `shared/` that it begins from: `shared.small-box`. */
  readonly use?: At<string>;
  /** What it is stuck on, or behind. */
  readonly on?: At<Ref>;
  readonly placement: Placement;
  readonly overhang: boolean;
  /** The pieces that go into this one, and those that this goes round: one, or a set that lies together. */
  readonly holds: readonly At<string>[];
  readonly around: readonly At<string>[];
  readonly corners?: RoundedCorners;
  readonly edge: readonly PunchedEdge[];
  readonly impressions: readonly ImpressionAsWritten[];
  /** How many of it one project takes. */
  readonly count: At<number>;
  readonly openings: readonly OpeningAsWritten[];
  /** Where the whole entry stands. */
  readonly at: Place;
};

/** A flat cut; a net by its score lines; or a ready-made form. */
export type PieceBody =
  | { readonly kind: 'flat'; readonly cut: AtSize; readonly outline?: OutlineAsWritten }
  | ({ readonly kind: 'net'; readonly cut: AtSize } & NetAsWritten)
  | ({ readonly kind: 'form' } & FormAsWritten);

/** What the finished box holds. */
export type Holds = {
  readonly item: string;
  readonly size?: AtVolume;
  readonly count: At<number>;
  /** The piece it goes in, where there are several it could. */
  readonly in?: At<string>;
  readonly food: boolean;
  readonly allergens: readonly At<string>[];
  readonly at: Place;
};

export type Picture = { readonly path: At<string>; readonly alternative: string; readonly at: Place };

/** The Markdown of an introduction or a step, with what it names. Positions in the tree are relative to the whole file. */
export type Prose = {
  readonly nodes: readonly RootContent[];
  readonly references: readonly Reference[];
  readonly pictures: readonly Picture[];
  /** Runs of plain text, for measurements in prose. */
  readonly texts: readonly At<string>[];
};

export type Step = {
  readonly title: At<string>;
  /** The heading's inline Markdown, without its `:step` directive. */
  readonly heading: readonly RootContent[];
  readonly minutes?: At<number>;
  /** Done before the session. */
  readonly ahead: boolean;
  /** What is taken up in it, by names of the supplies. */
  readonly uses: readonly At<string>[];
  /** Minutes of waiting (glue or ink drying). */
  readonly dry?: At<number>;
  readonly prose: Prose;
};

/** One of several sizes or designs of a project. */
export type Variant = {
  readonly id: At<string>;
  /** What it is called on paper. */
  readonly name: string;
  /** What it is called in the name of a file; no other variant is called so. */
  readonly slug: string;
};

export type Project = MeetingAsWritten & {
  /** The folder's name, fit for an address. */
  readonly slug: string;
  /** Tells apart all that it was read from: its sheet, the settings, the shared files, its ledger, its pictures. */
  readonly content: string;
  /** The project's folder under the workspace's root. */
  readonly folder: string;
  readonly file: SourceFile;
  /** What was looked at to read it beside its sheet and ledger: `shared.stock.moss`, `picture photos/flat.jpg`. */
  readonly uses: ReadonlySet<string>;
  /** Which of the variants it is, where there are some. The first stands for the project. */
  readonly variant?: Variant;
  /** The other variants, each read as a project of its own; none of them has any. */
  readonly others: readonly Project[];
  readonly title: At<string>;
  readonly summary?: At<string>;
  /** `YYYY-MM-DD`, a day that exists. */
  readonly session?: At<string>;
  readonly level?: At<string>;
  readonly minutes?: At<number>;
  readonly tags: readonly At<string>[];
  readonly occasion?: At<string>;
  /** Where it is shown being made; http or https only. */
  readonly video?: At<string>;
  /** What its folder was called before. */
  readonly was: readonly At<string>[];
  readonly lang?: At<string>;
  /** Which editions are made. */
  readonly units: Units;
  /** The step of the metric edition: whole or half millimeters. */
  readonly metric: 'whole' | 'half';
  readonly unit: Unit;
  readonly stock: ReadonlyMap<string, Stock>;
  /** What takes the place of a stock that is no longer sold, by the name that the stock gives. */
  readonly substitutes: ReadonlyMap<string, Stock>;
  readonly pieces: ReadonlyMap<string, Piece>;
  /** What panels, openings and further sheets are called on paper, of whatever piece, by their names in the file. */
  readonly called: readonly { readonly name: At<string>; readonly value: At<string> }[];
  readonly holds?: Holds;
  readonly supplies: readonly Supply[];
  readonly introduction: Prose;
  readonly steps: readonly Step[];
  /** The whole body, for whoever needs it in one tree. */
  readonly body: Root;
  /** Every id written, readable or not: what names one of them is no unknown name. */
  readonly names: { readonly pieces: readonly string[]; readonly stock: readonly string[] };
  /** False when the frontmatter could not be read at all, so that nothing is known to be missing. */
  readonly readable: boolean;
  /** What was published of it before. */
  readonly ledger: Ledger;
  /** What other projects have published of shared pieces that this one has not. */
  readonly takenOver: readonly SettledNumbers[];
  /** Everything the reader could not take, in the order found. */
  readonly findings: readonly Finding[];
};

/** The demonstrator's own tools. */
export type Bench = {
  /** The pitch of the score board's grooves. */
  readonly board: At<Length>;
  /** The pitch of a metric board, if there is one. */
  readonly metricBoard?: At<Length>;
  /** The longest cut the trimmer makes. */
  readonly trimmer: At<Length>;
  readonly printerMargin: At<Length>;
  /** The mat of a cutting machine, and how the file for it has fold lines. */
  readonly mat: AtSize;
  readonly scores: 'solid' | 'perforated';
};

export type Paper = 'letter' | 'a4';

export type Site = MeetingAsWritten & {
  readonly title: string;
  /** What the site is, in a sentence. */
  readonly summary?: At<string>;
  readonly url?: At<string>;
  readonly language: string;
  /** Where the settings name it; absent where they do not. */
  readonly languageAt?: Place;
  readonly paper: readonly Paper[];
  /** Which editions are made of projects that say nothing of it. */
  readonly units: Units;
  readonly currency: string;
  /** The address that opens a file in the demonstrator's editor, with `{file}`, `{line}` and `{column}` in it. */
  readonly editor?: At<string>;
  /** The font that has the letters our typeface lacks. */
  readonly font?: Font;
  /** Where the settings name it. */
  readonly fontAt?: Place;
  readonly bench: Bench;
  readonly pricing?: Pricing;
  readonly sessions?: Schedule;
  readonly findings: readonly Finding[];
};

/** What the projects of a workspace have in common. */
export type Commons = {
  /** The folder's path, absolute, for whoever reads or writes files. */
  readonly root: string;
  readonly site: Site;
  readonly shared: Shared;
  /** The slug of every folder that can be a project, with the folders that have a sheet: two are one too many. */
  readonly addresses: ReadonlyMap<string, readonly string[]>;
  /** Findings of shared files, each reported once. */
  readonly findings: readonly Finding[];
};

export type Workspace = Commons & {
  /** In the order of their slugs. Two may share a slug; a rule says so. */
  readonly projects: readonly Project[];
};
