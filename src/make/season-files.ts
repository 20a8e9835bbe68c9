import { seasonPage, seasonWords } from '../kit-pages/season-page.ts';
import { seasonCsv, seasonJson } from '../season/report.ts';
import type { Season } from '../season/season.ts';
import { UNDATED } from '../site/listed.ts';
import { preparationCalendar } from '../site/preparation-calendar.ts';
import { labelsFor } from '../words/languages.ts';
import type { Written } from './files.ts';
import { dayOfProject } from './output.ts';
import { readLabels } from './package-files.ts';
import { benchInput, type PlanFilesOptions, putPlan } from './plan-files.ts';

export type SeasonFilesOptions = PlanFilesOptions & { readonly season: Season };

/** Where the files of a season lie below the output folder. */
export const SEASON_FOLDER = 'host/season';

/**
 * Writes a season: `index.html`, `season.json`, `season.csv`, `season.ics` and `season.pdf`.
 * @throws Unwritable, BrowserMissing or PrintFault, each with a remedy in one line.
 */
export function makeSeasonFiles(options: SeasonFilesOptions): Promise<readonly Written[]> {
  const { season, site, currency } = options;
  const { labels } = labelsFor(readLabels(), site.language);
  const input = { season, ...benchInput(options, labels) };
  const [first] = season.sessions;
  return putPlan(options, {
    folder: SEASON_FOLDER,
    date: first ? dayOfProject(first.project) : UNDATED,
    screen: seasonPage({ ...input, target: 'page' }),
    data: [
      { name: 'season.json', bytes: seasonJson(season, currency) },
      { name: 'season.csv', bytes: seasonCsv(season, currency) },
      { name: 'season.ics', bytes: preparationCalendar(season, site, seasonWords(input)) },
    ],
    prints: [{ name: 'season.pdf', page: seasonPage(input) }],
  });
}
