import { calendarOf, sessionCalendar } from '../../site/calendar.ts';
import { cardOf } from '../card.ts';
import type { Output } from '../output.ts';

/** `site/sessions.ics`: every session and the schedule; `site/<slug>/<slug>.ics`: one session alone. */
export const calendars: Output = {
  ofProject: (material) => {
    const { slug, site, labels } = material;
    const text = sessionCalendar(cardOf(material), site, labels);
    return text === undefined ? [] : [{ path: `site/${slug}/${slug}.ics`, produce: () => text }];
  },
  ofSite: ({ cards, site, labels }) => {
    const text = calendarOf(cards, site, labels);
    return text === undefined ? [] : [{ path: 'site/sessions.ics', produce: () => text }];
  },
};
