import { accentOf } from '../drawing/accent.ts';
import type { PlacedPicture } from '../drawing/placed-picture.ts';
import type { Editions } from '../edition/editions.ts';
import type { Ledger } from '../project/ledger/ledger.ts';
import { revisionsView, revisionTitle } from '../words/changes.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import { cautionsFor } from './cautions.ts';
import { areaCss, type PageMargins, pageCss } from './css.ts';
import { cutList } from './cut-list.ts';
import { heroOf, layerViews, netViews, turnViews } from './drawings.ts';
import { factsOf } from './facts.ts';
import { mailingFrom } from './mail.ts';
import { shownText } from './measured-text.ts';
import type { MeetingView } from './meeting-view.ts';
import type { Download } from './prints.ts';
import { qrSvg } from './qr.ts';
import { type PageInput, pageHtml } from './render.ts';
import { scoreList } from './score-list.ts';
import { type Setting, settingOf, type Target } from './setting.ts';
import { introductionOf, stepViews } from './steps.ts';
import { paperColor, supplyGroups } from './supplies.ts';

/** Everything a sheet is made of. */
type SheetInput = PageInput & {
  readonly editions: Editions;
  readonly target: Target;
  /** The project's photos by the path it names them by. */
  readonly pictures: ReadonlyMap<string, PlacedPicture>;
  /** What was published of it, the sheet being made included. */
  readonly ledger: Ledger;
  /** Scripts of a page, by address; none in print. */
  readonly scripts: readonly string[];
  readonly links: SheetLinks;
  /** Of a page. */
  readonly meeting?: MeetingView;
  /** Of a page: the ways to the lists of projects like it. */
  readonly more?: readonly object[];
  /** Of a page: what was handed out with earlier revisions. */
  readonly earlier?: readonly (Download & { readonly revision: number })[];
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
  /** The script that keeps a page for a room without a network. */
  readonly offline?: string;
};

/** A project as one sheet: the page, or the document to be printed. Pure: its only dates are the project's own. */
export function sheetHtml(input: SheetInput): string {
  const { editions, site, target, links, ledger } = input;
  const setting = settingOf(editions, target, input.labels, input.pictures);
  const { project, voice } = setting;
  const title = typographic(project.title.value, voice.say);
  const summary = project.summary && shownText(project.summary.value, setting);
  const hero = heroOf(setting);
  const codes = target === 'page' ? [] : codesOf(setting, links.address);
  const head = {
    title: `${title} – ${site.title}`,
    description: summary ?? title,
    css: ownCss(setting, input),
    scripts: input.scripts,
  };
  return pageHtml(input, 'sheet', head, {
    target,
    isPage: target === 'page',
    showsBoth: setting.measures.shown.length > 1,
    head: input.head,
    siteTitle: site.title,
    home: links.home,
    share: links.share,
    offline: links.offline,
    downloads: links.downloads.map(({ label, href, listed }, place) => ({
      label: voice.say(label),
      href,
      isMain: place === 0 && listed !== undefined,
      paper: listed?.line === 'site-handout' ? listed.paper : undefined,
    })),
    title,
    summary: summary && typographic(summary, voice.say),
    hero: hero?.html,
    isIllustrated: hero !== undefined || codes.length > 0,
    facts: factsOf(setting, mailingFrom(site)),
    meeting: input.meeting,
    more: input.more,
    codes,
    introduction: introductionOf(setting, hero?.photo),
    cutList: cutList(setting),
    scoreList: scoreList(setting),
    nets: netViews(setting),
    layers: layerViews(setting, hero),
    turns: turnViews(setting),
    supplies: supplyGroups(setting),
    cautions: cautionsFor(project, voice),
    steps: stepViews(setting, hero),
    revision: revisionView(input, setting),
    // Ticks of an older revision must not seem to belong to this one.
    ticksKey: `${project.slug}/${ledger.revisions.at(-1)?.number ?? 0}`,
  });
}

/** What changed, and on a page what it was before. */
function revisionView(
  { ledger, target, earlier = [] }: SheetInput,
  { voice, measures }: Setting,
): object | undefined {
  const view = revisionsView(ledger, voice, measures.shown);
  if (!view || target !== 'page') return view && { ...view, earlier: [] };
  const filesOf = (revision: number): readonly object[] =>
    earlier
      .filter((file) => file.revision === revision)
      .map(({ label, href }) => ({ label: voice.say(label), href }));
  return { ...view, earlier: view.earlier.map((each) => ({ ...each, files: filesOf(each.number) })) };
}

/** On paper, what leads to the sheet's page and to its video. */
function codesOf({ project, voice: { say } }: Setting, address: string | undefined): readonly object[] {
  const video = project.video?.value;
  return [
    { to: address, caption: say('this-sheet') },
    { to: video, caption: say('video') },
  ].flatMap(({ to, caption }) => (to === undefined ? [] : [{ code: qrSvg(to, say), caption }]));
}

function ownCss(setting: Setting, input: SheetInput): string {
  const { color, tint } = accentOf(paperColor(setting.project));
  const colors = `:root { --accent: ${color}; --tint: ${tint}; }`;
  if (setting.target === 'page') return colors;
  const margins = pageCss(setting.target, marginsOf(setting, input), setting.voice);
  return [colors, margins, areaCss(setting.target, input.site.title, setting.voice)].join('\n');
}

function marginsOf({ project, voice }: Setting, { site, links, ledger }: SheetInput): PageMargins {
  const revision = ledger.revisions.at(-1);
  const session = project.session && voice.say('session-day', { date: voice.date(project.session.value) });
  return {
    title: project.title.value,
    site: site.title,
    address: links.address,
    state: revision ? revisionTitle(revision, voice) : session,
  };
}
