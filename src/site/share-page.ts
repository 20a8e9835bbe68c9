import { SIDES_OF } from '../drawing/pages.ts';
import { qrSvg } from '../handout/qr.ts';
import { type PageInput, pageHtml } from '../handout/render.ts';
import { readable } from '../handout/supplies.ts';
import type { Paper } from '../project/model.ts';
import { recutWords, revisionWords } from '../words/changes.ts';
import { dropSoftHyphens } from '../words/hyphens.ts';
import { html, type SafeHtml, textOf } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import { type Voice, voiceOf } from '../words/voice.ts';
import { previewElements, type SitePages, sitePageHtml } from './frame.ts';
import { type ListedProject, papersLines } from './listed.ts';
import { meetingView, saidMeeting } from './meeting.ts';
import { PICTURE_SIZES, type PictureFormat } from './picture-formats.ts';
import { absolute } from './place.ts';
import { hoursOf, whenText } from './when.ts';

/** Addresses of a project's files, relative to its own folder. */
type ShareLinks = {
  readonly linkPicture: string;
  /** The table tents; none where the site has no address. */
  /** Pictures to be posted, relative to the project's folder. */
  readonly posted: readonly { readonly format: PictureFormat; readonly name: string }[];
  readonly tents: readonly { readonly paper: Paper; readonly href: string }[];
};

/** `<slug>/share/index.html`: everything to hand a project on with, by screen, by mail or on paper. */
export function shareHtml(project: ListedProject, links: ShareLinks, pages: SitePages): string {
  const { site } = pages;
  const voice = voiceOf(pages.labels);
  const { slug, summary, session, accent } = project;
  const title = typographic(project.title, voice.say);
  const address = absolute(site, `${slug}/`);
  const when = session === undefined ? undefined : whenText(session, hoursOf(site), voice);
  const { place } = saidMeeting(project, site);
  const heading = voice.say('share-title', { title });
  const text = [title, summary && typographic(summary, voice.say), when, when && place, address]
    .filter((line) => line !== undefined)
    .map(dropSoftHyphens)
    .join('\n');
  const page = {
    title: `${heading} – ${site.title}`,
    description: summary ?? title,
    home: `${pages.root}index.html`,
    css: `:root { --accent: ${accent}; }`,
    // A link to this page that is passed on shows the sheet itself, and no search engine need list both.
    head: [html`<meta name="robots" content="noindex">`, projectPreview(project, links.linkPicture, pages)],
  };
  return sitePageHtml('share', pages, page, {
    title: heading,
    sheet: '../index.html',
    address,
    qr: address === undefined ? undefined : qrSvg(address, voice.say),
    name: slug,
    plainTitle: dropSoftHyphens(title),
    embed: address === undefined ? undefined : embedCard(project, address, links.linkPicture, pages),
    correction: correctionOf(project, address, voice),
    pictures: [{ format: 'wide' as const, name: links.linkPicture }, ...links.posted].map(
      ({ format, name }) => ({
        ...PICTURE_SIZES[format],
        src: `../${name}`,
        file: `${slug}-${format}${name.slice(name.lastIndexOf('.'))}`,
        format,
        save: voice.say(`share-picture-${format}`),
      }),
    ),
    text,
    rows: text.split('\n').length + 2,
    meeting: meetingView(project, pages, `../${slug}.ics`),
    papers: papersLines(
      project.title,
      project.papers.map((paper) => ({ ...paper, href: `../../${paper.href}` })),
      voice,
    ),
    tents: links.tents.map(({ paper, href }) => ({
      name: voice.say(`site-paper-${paper}`),
      href: `../${href}`,
    })),
  });
}

/** A card for somebody's own page: picture, title and link, with no script and no style of ours but its own. */
function embedCard(
  { title, slug, accent }: ListedProject,
  address: string,
  linkPicture: string,
  { site }: SitePages,
): string {
  const picture = absolute(site, `${slug}/${linkPicture}`) ?? '';
  const { width, height } = PICTURE_SIZES.wide;
  return html`<a href="${address}" style="display:block;max-width:30em;color:${accent}">
<img src="${picture}" width="${width}" height="${height}" alt="" style="display:block;width:100%;height:auto">
<strong>${title}</strong> – ${site.title}
</a>`.toHTML();
}

/** A message for those who have an earlier sheet: what changed, and what to cut again. */
function correctionOf(
  { title, revisions, alone }: ListedProject,
  address: string | undefined,
  voice: Voice,
): string | undefined {
  const revision = revisions.at(-1);
  if (revision === undefined || revision.number === 1) return undefined;
  const shown = alone && ([alone] as const);
  const { changes } = revisionWords(revision, voice.say, shown);
  const lines = [
    voice.say('site-feed-revision', { title, number: revision.number }),
    ...changes.map((change) => `– ${textOf(change)}`),
    ...recutWords(revisions, voice, shown),
    address,
  ];
  return lines
    .filter((line) => line !== undefined)
    .map(textOf)
    .join('\n');
}

/** The link preview of a project's page. */
export function projectPreview(
  { slug, title, summary, picture }: ListedProject,
  linkPicture: string,
  { site, labels }: Pick<SitePages, 'site' | 'labels'>,
): SafeHtml {
  return previewElements(site, labels, {
    title,
    description: summary ?? title,
    kind: 'article',
    path: `${slug}/`,
    picture: { path: `${slug}/${linkPicture}`, alternative: picture?.alternative || title },
  });
}

/** What a table tent is made with. */
type TentSetting = PageInput & { readonly paper: Paper };

/** The two feet at the ends of the sheet lie over one another and hold the tent open. */
const FOOT = 32;

/**
 * A sheet that folds into a tent for the table: two faces back to back, each with the QR code, and two feet that are
 * stuck together. Undefined where the site has no address for the code to lead to.
 */
export function tentHtml(project: ListedProject, setting: TentSetting): string | undefined {
  const { site, labels, paper } = setting;
  const address = absolute(site, `${project.slug}/`);
  if (address === undefined) return undefined;
  const voice = voiceOf(labels);
  const [width, height] = SIDES_OF[paper];
  const face = height / 2 - FOOT;
  const css = `@page { size: ${width}mm ${height}mm; margin: 0; }
:root { --accent: ${project.accent}; --face: ${face}mm; --foot: ${FOOT}mm; }`;
  const title = typographic(project.title, voice.say);
  const head = { title: voice.say('share-tent-of', { title }), description: project.summary ?? title, css };
  return pageHtml(setting, 'tent', head, {
    siteTitle: site.title,
    title,
    when: project.session && whenText(project.session, hoursOf(site), voice),
    place: project.session && saidMeeting(project, site).place,
    address: readable(address),
    qr: qrSvg(address, voice.say),
    faces: [{ side: 'back' }, { side: 'front' }],
  });
}
