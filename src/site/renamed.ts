import { html } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import { voiceOf } from '../words/voice.ts';
import { type SitePages, sitePageHtml } from './frame.ts';
import type { ListedProject } from './listed.ts';
import { absolute } from './place.ts';

/** An address of before, and the project that is now elsewhere. */
type Renamed = { readonly was: string; readonly project: ListedProject };

/** Every address of before that no project has now; of two projects that claim one, the first has it. */
export function renamedOf(projects: readonly ListedProject[]): readonly Renamed[] {
  const taken = new Set(projects.map(({ slug }) => slug));
  return projects.flatMap((project) =>
    (project.was ?? []).flatMap((was) => {
      if (taken.has(was)) return [];
      taken.add(was);
      return [{ was, project }];
    }),
  );
}

/** `<was>/index.html`: leads on at once, with a link for whoever stays. */
export function renamedHtml({ project }: Renamed, pages: SitePages): string {
  const voice = voiceOf(pages.labels);
  const title = typographic(project.title, voice.say);
  const href = `${pages.root}${project.slug}/index.html`;
  const address = absolute(pages.site, `${project.slug}/`);
  const page = {
    title: `${title} – ${pages.site.title}`,
    description: project.summary ?? title,
    home: `${pages.root}index.html`,
    head: [
      html`<meta http-equiv="refresh" content="0; url=${href}">`,
      html`<meta name="robots" content="noindex">`,
      ...(address === undefined ? [] : [html`<link rel="canonical" href="${address}">`]),
    ],
  };
  return sitePageHtml('renamed', { ...pages, scripts: [] }, page, { title, href });
}
