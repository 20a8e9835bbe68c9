import { qrSvg } from '../handout/qr.ts';
import type { Paper } from '../project/model.ts';
import { html, type SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import { voiceOf } from '../words/voice.ts';
import { pageHtml, type SitePages } from './frame.ts';
import { previewElements } from './head.ts';
import type { ListedProject } from './listed.ts';
import { papersLines } from './papers-view.ts';
import { absolute } from './place.ts';
import { hoursOf, whenText } from './when.ts';

/** Addresses of a project's files, relative to its own folder. */
type ShareLinks = {
  readonly linkPicture: string;
  readonly calendar: string | undefined;
  /** The table tents; none where the site has no address. */
  readonly tents: readonly { readonly paper: Paper; readonly href: string }[];
};

/** `<slug>/share/index.html`: everything to hand a project on with, by screen, by mail or on paper. */
export function shareHtml(project: ListedProject, links: ShareLinks, pages: SitePages): string {
  const { site } = pages;
  const voice = voiceOf(pages.labels);
  const { slug, summary, session, accent } = project;
  const title = typographic(project.title, voice.language);
  const address = absolute(site, `${slug}/`);
  const when = session === undefined ? undefined : whenText(session, hoursOf(site), voice);
  const heading = voice.say('share-title', { title });
  const text = [title, summary && typographic(summary, voice.language), when, address]
    .filter((line) => line !== undefined)
    .join('\n');
  const page = {
    title: `${heading} – ${site.title}`,
    description: summary ?? title,
    home: `${pages.root}index.html`,
    css: `:root { --accent: ${accent}; }`,
    // A link to this page that is passed on shows the sheet itself, and no search engine need list both.
    head: [html`<meta name="robots" content="noindex">`, projectPreview(project, links.linkPicture, pages)],
  };
  return pageHtml('share', pages, page, {
    title: heading,
    sheet: '../index.html',
    address,
    qr: address === undefined ? undefined : qrSvg(address, voice.say('share-qr', { address })),
    linkPicture: `../${links.linkPicture}`,
    text,
    rows: text.split('\n').length + 2,
    when,
    calendar: links.calendar && `../${links.calendar}`,
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
