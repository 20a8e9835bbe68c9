import { preparationText } from '../kit-pages/preparation-text.ts';
import type { KitWords } from '../kit-pages/words.ts';
import type { Site } from '../project/model.ts';
import type { Season } from '../season/season.ts';
import { dayCalendar } from './calendar.ts';
import { lastingName } from './place.ts';

/** All that is to be done for a season, each on the day by which it has to be done. */
export function preparationCalendar({ preparations }: Season, site: Site, words: KitWords): string {
  const days = preparations.map((preparation) => {
    const { kind, date } = preparation;
    const of = preparation.kind === 'buy' ? date : preparation.session.project.slug;
    const { what, details } = preparationText(preparation, words);
    return {
      uid: lastingName(site, `season ${kind} ${of}`),
      date,
      title: what,
      description: details.length > 0 ? details.join('\n') : undefined,
    };
  });
  return dayCalendar(words.voice.say('season-prepare'), days);
}
