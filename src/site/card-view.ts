import { pictureElement } from '../drawing/figures.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import { typographic } from '../words/typographic.ts';
import type { Voice } from '../words/voice.ts';
import type { ListedProject } from './listed.ts';
import { type PapersLine, papersLines } from './papers-view.ts';

/** What the list shows of a project, and what it is found by. */
export type CardView = {
  readonly href: string;
  readonly title: string;
  readonly summary: string | undefined;
  readonly accent: string;
  readonly picture: { readonly html: SafeHtml; readonly drawn: boolean } | undefined;
  readonly when: string | undefined;
  readonly facts: readonly string[];
  readonly papers: readonly PapersLine[];
  readonly found: {
    readonly level: string;
    readonly minutes: string;
    readonly occasion: string;
    readonly tags: string;
  };
};

/** A third of a desk screen's column; a thumbnail on a phone. */
const CARD_SIZES = '(min-width: 44rem) 21rem, 7.5rem';

/** Stands between two tags; no tag of one line holds it. */
export const TAG_BREAK = '\n';

export function cardView(project: ListedProject, voice: Voice): CardView {
  const { slug, title, summary, session, level, minutes, occasion, tags, picture, accent, papers } = project;
  return {
    href: `${slug}/index.html`,
    title: typographic(title, voice.language),
    summary: summary === undefined ? undefined : typographic(summary, voice.language),
    accent,
    // The card's title says what the picture shows; a second reading of it would only be in the way.
    picture: picture && {
      html: pictureElement(picture, '', { sizes: CARD_SIZES, lazy: true }),
      drawn: picture.drawn,
    },
    when: session === undefined ? undefined : voice.day(session),
    facts: [
      ...(minutes === undefined ? [] : [voice.duration(minutes)]),
      ...(level === undefined ? [] : [level]),
    ],
    papers: papersLines(title, papers, voice),
    found: {
      level: level ?? '',
      minutes: minutes === undefined ? '' : String(minutes),
      occasion: occasion ?? '',
      tags: tags.join(TAG_BREAK),
    },
  };
}
