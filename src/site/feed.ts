import { compare } from '../measure/numbers.ts';
import type { Revision } from '../project/ledger/ledger.ts';
import type { Site } from '../project/model.ts';
import { recutWords, revisionWords } from '../words/changes.ts';
import type { Labels } from '../words/labels.ts';
import { html, SafeHtml, xmlDocument } from '../words/safe-html.ts';
import { type Voice, voiceOf } from '../words/voice.ts';
import { type ListedProject, UNDATED } from './listed.ts';
import { saidMeeting } from './meeting.ts';
import { absolute, lastingName, siteAddress } from './place.ts';
import { hoursOf, whenText } from './when.ts';

/** What is new, an entry each: a revision that was published, or a project that never was. */
type FeedNews = {
  readonly project: ListedProject;
  readonly revision?: Revision;
  /** `YYYY-MM-DD`. */
  readonly date: string;
};

/** A reader that looks in once a week misses none of so many. */
const MOST_ENTRIES = 40;

/**
 * The site's Atom feed (RFC 4287), the latest first. An entry is dated by the day it was published, whenever its session
 * is; one that never was published is news of no day, and stands last. Links are absolute where the site has an address.
 */
export function feedXml(projects: readonly ListedProject[], site: Site, labels: Labels): string {
  const voice = voiceOf(labels);
  const news = projects
    .flatMap(newsOf)
    .toSorted((a, b) => compare(b.date, a.date) || compare(a.project.slug, b.project.slug))
    .slice(0, MOST_ENTRIES);
  return xmlDocument(html`<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="${voice.language}">
<id>urn:uuid:${lastingName(site, 'feed')}</id>
<title>${site.title}</title>
<updated>${timestamp(news[0]?.date ?? UNDATED)}</updated>
<author>
<name>${site.title}</name>
</author>
<link rel="self" type="application/atom+xml" href="${absolute(site, 'feed.xml') ?? 'feed.xml'}"/>
<link rel="alternate" type="text/html" href="${siteAddress(site) ?? 'index.html'}"/>
<generator>Sheetwright</generator>
${SafeHtml.join(news.map((item) => entryOf(item, site, voice)))}</feed>`);
}

function newsOf(project: ListedProject): FeedNews[] {
  const { revisions } = project;
  if (revisions.length > 0) return revisions.map((revision) => ({ project, revision, date: revision.date }));
  return [{ project, date: UNDATED }];
}

function entryOf({ project, revision, date }: FeedNews, site: Site, voice: Voice): SafeHtml {
  const { slug, title, tags } = project;
  const path = `${slug}/`;
  const name = revision ? `${slug} revision ${revision.number}` : slug;
  const isFirst = revision === undefined || revision.number === 1;
  return html`<entry>
<id>urn:uuid:${lastingName(site, name)}</id>
<title>${isFirst ? title : voice.say('site-feed-revision', { title, number: revision.number })}</title>
<published>${timestamp(date)}</published>
<updated>${timestamp(date)}</updated>
<link rel="alternate" type="text/html" href="${absolute(site, path) ?? `${path}index.html`}"/>
${SafeHtml.join(tags.map((term) => html`<category term="${term}"/>\n`))}<content type="html">${contentOf(project, revision, site, voice).toHTML()}</content>
</entry>
`;
}

function contentOf(
  project: ListedProject,
  revision: Revision | undefined,
  site: Site,
  voice: Voice,
): SafeHtml {
  const { summary, session, alone, picture, revisions } = project;
  const { place } = saidMeeting(project, site);
  const shown = alone && ([alone] as const);
  const changes = revision ? revisionWords(revision, voice.say, shown).changes : [];
  const upToIt = revisions.filter(({ number }) => revision && number <= revision.number);
  const said = [
    picture &&
      html`<p><img src="${absolute(site, picture.src) ?? picture.src}" width="${picture.width}" height="${picture.height}" alt="${picture.alternative}"></p>`,
    summary !== undefined && html`<p>${summary}</p>`,
    session !== undefined &&
      html`<p>${[whenText(session, hoursOf(site), voice), place].filter(Boolean).join(', ')}</p>`,
    changes.length > 0 && html`<ul>${SafeHtml.join(changes.map((change) => html`<li>${change}</li>`))}</ul>`,
    ...recutWords(upToIt, voice, shown).map((cutAgain) => html`<p>${cutAgain}</p>`),
  ];
  return SafeHtml.join(
    said.filter((part) => part instanceof SafeHtml),
    '\n',
  );
}

function timestamp(date: string): string {
  return `${date}T00:00:00Z`;
}
