import { Temporal } from 'temporal-polyfill';
import type { Site } from '../project/model.ts';
import type { ListedProject } from './listed.ts';
import { saidMeeting } from './meeting.ts';
import { absolute } from './place.ts';
import { hoursOf } from './when.ts';

/**
 * A session as machines read it, an `Event` of schema.org in JSON-LD; undefined where the project has none.
 * @param image The project's picture, relative to its page.
 */
export function sessionEvent(
  project: ListedProject,
  site: Site,
  image: string | undefined,
): object | undefined {
  const { slug, title, summary, session, minutes } = project;
  if (session === undefined) return undefined;
  const { place, host } = saidMeeting(project, site);
  const url = absolute(site, `${slug}/`);
  return {
    '@context': 'https://schema.org',
    '@type': 'Event',
    name: title,
    ...(summary !== undefined && { description: summary }),
    startDate: startOf(session, site),
    ...(minutes !== undefined && { duration: `PT${minutes}M` }),
    ...(place !== undefined && { location: { '@type': 'Place', name: place, address: place } }),
    organizer: { '@type': 'Organization', name: site.title },
    ...(host !== undefined && { performer: { '@type': 'Person', name: host } }),
    ...(image !== undefined && { image }),
    ...(url !== undefined && { url }),
  };
}

/** ISO 8601, with the offset of the zone on that day; the day alone where there is no time. */
function startOf(session: string, site: Site): string {
  const { at, zone } = hoursOf(site);
  if (at === undefined) return session;
  const local = Temporal.PlainDateTime.from(`${session}T${at}`);
  if (zone === undefined) return local.toString();
  return local.toZonedDateTime(zone).toString({ timeZoneName: 'never' });
}
