import { pictureElement } from '../drawing/placed-picture.ts';
import type { Site } from '../project/model.ts';
import { typographic } from '../words/typographic.ts';
import type { Voice } from '../words/voice.ts';
import { type ListedProject, papersLines } from './listed.ts';
import { saidMeeting } from './meeting.ts';
import { hoursOf, whenText } from './when.ts';

/** A third of a desk screen's column; a thumbnail on a phone. */
const CARD_SIZES = '(min-width: 44rem) 21rem, 7.5rem';

/** What a card shows of a project, on a page at the site's root. */
export function cardView(project: ListedProject, { site }: { readonly site: Site }, voice: Voice): object {
  const { slug, title, summary, session, level, minutes, picture, accent, papers } = project;
  return {
    href: `${slug}/index.html`,
    session,
    fullWhen: session === undefined ? undefined : whenText(session, hoursOf(site), voice),
    place: session === undefined ? undefined : saidMeeting(project, site).place,
    ownPlace: project.place,
    calendar: `${slug}/${slug}.ics`,
    title: typographic(title, voice.say),
    summary: summary === undefined ? undefined : typographic(summary, voice.say),
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
  };
}
