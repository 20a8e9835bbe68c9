import { accentOf } from '../drawing/accent.ts';
import type { PlacedPicture } from '../drawing/figures.ts';
import type { Editions } from '../edition/editions.ts';
import type { Ledger } from '../project/ledger.ts';
import type { Site } from '../project/model.ts';
import type { Labels } from '../words/labels.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import { type Voice, voiceOf } from '../words/voice.ts';
import { type Caution, cautionsFor } from './cautions.ts';
import { type Margins, pageCss, type Styles, styleElements } from './css.ts';
import { type CutList, cutList } from './cut-list.ts';
import { heroOf, type SheetDrawings, sheetDrawings, type TurnView, turnViews } from './drawings.ts';
import { type Fact, factsOf } from './facts.ts';
import { type MailView, mailView } from './mail.ts';
import type { Download } from './prints.ts';
import { introductionOf } from './prose.ts';
import { qrSvg } from './qr.ts';
import type { PageHead, Renderer } from './render.ts';
import { type RevisionsView, revisionsView, revisionTitle } from './revision.ts';
import { type ScoreList, scoreList } from './score-list.ts';
import { type Setting, settingOf, type Target } from './setting.ts';
import { type StepView, stepViews } from './steps.ts';
import { paperColor, type SupplyGroup, supplyGroups } from './supplies.ts';

/** Everything a sheet is made of. */
type SheetInput = {
  readonly editions: Editions;
  readonly site: Site;
  readonly labels: Labels;
  readonly target: Target;
  /** The project's photos by the path it names them by. */
  readonly pictures: ReadonlyMap<string, PlacedPicture>;
  /** What was published of it, the sheet being made included. */
  readonly ledger: Ledger;
  readonly styles: Styles;
  /** Scripts of a page, by address; none in print. */
  readonly scripts: readonly string[];
  readonly links: SheetLinks;
  /** Elements of the page's head for machines: link preview, icons, what the project is. */
  readonly head?: SafeHtml;
};

/** Where a sheet's page leads. What is absent is not shown. */
type SheetLinks = {
  /** The list of projects, relative to the page. */
  readonly home?: string;
  /** Where the page stands on the web, for the foot of a print. */
  readonly address?: string;
  readonly downloads: readonly Download[];
  readonly share?: string;
};

/** What the templates print. Every key is there; what a sheet has not is undefined. */
export type SheetModel = PageHead & {
  readonly target: Target;
  readonly isPage: boolean;
  readonly slug: string;
  readonly head: SafeHtml | undefined;
  readonly siteTitle: string;
  readonly home: string | undefined;
  readonly share: string | undefined;
  readonly downloads: readonly { readonly label: string; readonly href: string }[];
  readonly title: string;
  readonly summary: string | undefined;
  readonly hero: SafeHtml | undefined;
  readonly facts: readonly Fact[];
  /** Leads from a print to the page on the web. */
  readonly code: SafeHtml | undefined;
  readonly introduction: SafeHtml | undefined;
  readonly cutList: CutList;
  readonly scoreList: ScoreList | undefined;
  readonly drawings: SheetDrawings | undefined;
  /** Pieces to be turned and folded; none in print. */
  readonly turns: readonly TurnView[];
  readonly supplies: readonly SupplyGroup[];
  readonly cautions: readonly Caution[];
  readonly steps: readonly StepView[];
  readonly mail: MailView | undefined;
  readonly revision: RevisionsView | undefined;
  /** Names the memory of ticks: ticks of an older revision must not seem to belong to this one. */
  readonly ticksKey: string;
};

/** A project as one sheet, ready for its template. Pure: its only dates are the project's own. */
export function buildSheet(input: SheetInput): SheetModel {
  const { editions, site, target, links, ledger } = input;
  const setting = settingOf(editions, target, input.labels, input.pictures);
  const { project, voice } = setting;
  const title = typographic(project.title.value, voice.language);
  const hero = heroOf(setting);
  return {
    language: voice.language,
    target,
    isPage: target === 'page',
    slug: project.slug,
    documentTitle: `${title} – ${site.title}`,
    description: project.summary?.value ?? title,
    styles: styleElements(input.styles, ownCss(setting, input)),
    scripts: input.scripts,
    head: input.head,
    siteTitle: site.title,
    home: links.home,
    share: links.share,
    downloads: links.downloads.map(({ kind, href }) => ({ label: voice.say(`pdf-${kind}`), href })),
    title,
    summary: project.summary && typographic(project.summary.value, voice.language),
    hero: hero?.html,
    facts: factsOf(setting),
    code: target === 'page' ? undefined : codeOf(links, voice),
    introduction: introductionOf(setting),
    cutList: cutList(setting),
    scoreList: scoreList(setting),
    drawings: sheetDrawings(setting, hero?.showsLayers ? 1 : 0),
    turns: turnViews(setting),
    supplies: supplyGroups(setting),
    cautions: cautionsFor(project, voice),
    steps: stepViews(setting),
    mail: mailView(setting),
    revision: revisionsView(ledger, voice, setting.measures.leading, target === 'page'),
    ticksKey: `${project.slug}/${ledger.revisions.at(-1)?.number ?? 0}`,
  };
}

/** The page, or the document to be printed, as HTML. */
export function renderSheet(model: SheetModel, renderer: Renderer, labels: Labels): string {
  return renderer.render('sheet', model, voiceOf(labels).say);
}

function codeOf({ address }: SheetLinks, { say }: Voice): SafeHtml | undefined {
  return address === undefined ? undefined : qrSvg(address, say('share-qr', { address }));
}

function ownCss(setting: Setting, input: SheetInput): string {
  const { color, tint } = accentOf(paperColor(setting.project));
  const colors = `:root { --accent: ${color}; --tint: ${tint}; }`;
  if (setting.target === 'page') return colors;
  return `${colors}\n${pageCss(setting.target, marginsOf(setting, input), setting.voice)}`;
}

function marginsOf({ project, voice }: Setting, { site, links, ledger }: SheetInput): Margins {
  const revision = ledger.revisions.at(-1);
  const session = project.session && voice.say('session-day', { date: voice.date(project.session.value) });
  return {
    title: project.title.value,
    site: site.title,
    address: links.address,
    state: revision ? revisionTitle(revision, voice) : session,
  };
}
