import type { Site } from '../project/model.ts';
import { accentOf } from './accent.ts';
import { pictureElement } from './figures.ts';
import type { Labels } from './labels.ts';
import type { Renderer } from './render.ts';
import type { SafeHtml } from './safe-html.ts';
import { type Styles, styleElements } from './styles.ts';
import { typographic } from './typographic.ts';
import { type Voice, voiceOf } from './voice.ts';

/** What the list of projects shows of one. Addresses are relative to the list. */
export type ProjectCard = {
  readonly slug: string;
  readonly title: string;
  readonly summary?: string | undefined;
  /** `YYYY-MM-DD`. */
  readonly session?: string | undefined;
  readonly level?: string | undefined;
  readonly minutes?: number | undefined;
  readonly occasion?: string | undefined;
  readonly picture?:
    | { readonly src: string; readonly alternative: string; readonly width: number; readonly height: number }
    | undefined;
  readonly papers: readonly { readonly name: string; readonly href: string }[];
};

export type IndexInput = {
  readonly site: Pick<Site, 'title'>;
  readonly labels: Labels;
  readonly styles: Styles;
  readonly scripts: readonly string[];
  /** Projects whose session is still to come, the next one first. */
  readonly toCome: readonly ProjectCard[];
  /** All others, in the order to be shown. */
  readonly others: readonly ProjectCard[];
};

/** The list of all projects as a page. */
export function renderIndex(input: IndexInput, renderer: Renderer): string {
  const voice = voiceOf(input.labels);
  const lists = [
    { id: 'to-come', heading: voice.say('projects-to-come'), cards: input.toCome },
    { id: 'projects', heading: voice.say('projects-archive'), cards: input.others },
  ].filter(({ cards }) => cards.length > 0);
  const model = {
    ...pageFrame(input, voice, input.site.title),
    scripts: input.scripts,
    home: undefined,
    empty: lists.length === 0,
    lists: lists.map((list) => ({ ...list, cards: list.cards.map((card) => cardView(card, voice)) })),
  };
  return renderer.render('index', model, voice.say);
}

/** The page that stands where there is none. `home` must be absolute: nobody knows where it will be shown. */
export function renderNotFound(
  input: Pick<IndexInput, 'site' | 'labels' | 'styles'> & { readonly home: string | undefined },
  renderer: Renderer,
): string {
  const voice = voiceOf(input.labels);
  const title = `${voice.say('not-found')} – ${input.site.title}`;
  const model = { ...pageFrame(input, voice, title), scripts: [], home: input.home };
  return renderer.render('404', model, voice.say);
}

type Frame = {
  readonly language: string;
  readonly documentTitle: string;
  readonly description: string;
  readonly siteTitle: string;
  readonly styles: SafeHtml;
};

function pageFrame(
  { site, styles }: Pick<IndexInput, 'site' | 'styles'>,
  { language }: Voice,
  documentTitle: string,
): Frame {
  const { color, tint } = accentOf(undefined);
  return {
    language,
    documentTitle,
    description: site.title,
    siteTitle: site.title,
    styles: styleElements(styles, `:root { --accent: ${color}; --tint: ${tint}; }`),
  };
}

function cardView(card: ProjectCard, voice: Voice): object {
  const { slug, title, summary, session, level, minutes, occasion, picture, papers } = card;
  const facts = [session && voice.day(session), minutes && voice.duration(minutes), level, occasion];
  return {
    href: `${slug}/index.html`,
    title: typographic(title, voice.language),
    summary: summary && typographic(summary, voice.language),
    picture: picture && pictureElement(picture, picture.alternative),
    facts: facts.filter((fact) => fact !== undefined && fact !== 0),
    papers,
    papersLabel: voice.say('papers-of', { title }),
  };
}
