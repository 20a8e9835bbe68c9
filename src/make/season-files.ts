import { createRenderer } from '../handout/render.ts';
import type { Currency } from '../kit/report/figures.ts';
import { seasonPage, seasonWords } from '../kit-pages/season-page.ts';
import { openPrinter } from '../print/printer.ts';
import type { Site } from '../project/model.ts';
import { seasonCsv, seasonJson } from '../season/report.ts';
import type { Season } from '../season/season.ts';
import { UNDATED } from '../site/listed.ts';
import { preparationCalendar } from '../site/preparation-calendar.ts';
import { labelsFor } from '../words/languages.ts';
import { printStyles, typeset } from './assets.ts';
import { checkWritable, putFiles, type Written } from './files.ts';
import { dayOfProject } from './output.ts';
import { filesFor } from './package-files.ts';

export type SeasonFilesOptions = {
  readonly season: Season;
  readonly site: Site;
  readonly currency: Currency;
  /** The output folder, absolute. */
  readonly out: string;
  /** The browser's program, if one is named. */
  readonly browser?: string | undefined;
};

/** Where the files of a season lie below the output folder. */
export const SEASON_FOLDER = 'host/season';

/**
 * Writes a season: `index.html`, `season.json`, `season.csv`, `season.ics` and `season.pdf`.
 * @throws Unwritable, BrowserMissing or PrintFault, each with a remedy in one line.
 */
export async function makeSeasonFiles(options: SeasonFilesOptions): Promise<readonly Written[]> {
  const { season, site, currency, out, browser } = options;
  await checkWritable(out);
  const files = filesFor(site);
  const { labels } = labelsFor(files.labels, site.language);
  const [paper = 'letter'] = site.paper;
  const styles = printStyles(files, 'kit');
  const input = { season, site, currency, labels, styles, renderer: createRenderer(files), target: paper };
  const at = (name: string): string => `${SEASON_FOLDER}/${name}`;
  const written = await putFiles(out, [
    { path: at('index.html'), bytes: typeset(seasonPage({ ...input, target: 'page' }).html, files) },
    { path: at('season.json'), bytes: seasonJson(season, currency) },
    { path: at('season.csv'), bytes: seasonCsv(season, currency) },
    { path: at('season.ics'), bytes: preparationCalendar(season, site, seasonWords(input)) },
  ]);
  const printer = openPrinter({ browser });
  try {
    const { title, html } = seasonPage(input);
    const [first] = season.sessions;
    const date = first ? dayOfProject(first.project) : UNDATED;
    const bytes = await printer.pdf(typeset(html, files), { title, date });
    return [...written, ...(await putFiles(out, [{ path: at('season.pdf'), bytes }]))];
  } finally {
    await printer.close();
  }
}
