import type { Site } from '../../project/model.ts';
import type { Labels } from '../../words/labels.ts';
import { voiceOf } from '../../words/voice.ts';
import { changedOn, type ListedProject, UNDATED } from '../listed.ts';
import { absolute, lastingName, siteAddress } from '../place.ts';
import { calendarText, isRepeated, type RepeatedSession } from './calendar.ts';
import type { Session } from './session.ts';

/** `sessions.ics`: every session of the site, and those the schedule promises; undefined where there is none at all. */
export function calendarOf(
  projects: readonly ListedProject[],
  site: Site,
  labels: Labels,
): string | undefined {
  const sessions = projects
    .flatMap((project) => sessionOf(project, site, labels) ?? [])
    .toSorted((a, b) => (a.date === b.date ? 0 : a.date < b.date ? -1 : 1));
  const repeated = repeatedOf(site);
  const hasRepeated = repeated !== undefined && isRepeated(repeated, sessions);
  if (sessions.length === 0 && !hasRepeated) return undefined;
  return calendarText({ name: site.title, schedule: site.sessions, sessions, repeated });
}

/** `<slug>.ics`: one session; undefined where the project has none. */
export function sessionCalendar(project: ListedProject, site: Site, labels: Labels): string | undefined {
  const session = sessionOf(project, site, labels);
  return session && calendarText({ name: project.title, schedule: site.sessions, sessions: [session] });
}

/** The same name in both files: who has the one and takes the other has no session twice. */
function sessionOf(project: ListedProject, site: Site, labels: Labels): Session | undefined {
  const { slug, title, summary, session, minutes, tags } = project;
  if (session === undefined) return undefined;
  const address = absolute(site, `${slug}/`);
  const sheet = address && voiceOf(labels).say('site-event-sheet', { address });
  const description = [summary, sheet].filter((line) => line !== undefined).join('\n');
  return {
    uid: lastingName(site, `session ${slug}`),
    changed: changedOn(project),
    date: session,
    title,
    ...(description === '' ? {} : { description }),
    address,
    minutes,
    tags,
  };
}

function repeatedOf(site: Site): RepeatedSession | undefined {
  return (
    site.sessions && {
      uid: lastingName(site, 'schedule'),
      changed: UNDATED,
      title: site.title,
      address: siteAddress(site),
      schedule: site.sessions,
    }
  );
}
