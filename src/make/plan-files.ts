import { createRenderer } from '../handout/render.ts';
import type { Currency } from '../kit/report/figures.ts';
import type { BenchInput, KitPage } from '../kit-pages/shell.ts';
import { openPrinter } from '../print/printer.ts';
import type { Paper, Site } from '../project/model.ts';
import type { Labels } from '../words/labels.ts';
import { fontsFor, printStyles, typeset } from './assets.ts';
import { checkWritable, type OutputFile, putFiles, type Written } from './files.ts';
import { filesFor } from './package-files.ts';

/** Where what was planned is written, whatever it is. */
export type PlanFilesOptions = {
  readonly site: Site;
  readonly currency: Currency;
  /** The output folder, absolute. */
  readonly out: string;
  /** The browser's program, if one is named. */
  readonly browser?: string | undefined;
};

/** A page to print, and the name of its PDF. */
export type PagePrint = { readonly name: string; readonly page: KitPage };

/** What is written of a plan. */
type PlanPages = {
  /** Below the output folder. */
  readonly folder: string;
  /** Stamped into its PDFs: no day of making. */
  readonly date: string;
  readonly screen: KitPage;
  readonly data: readonly { readonly name: string; readonly bytes: string }[];
  readonly prints: readonly PagePrint[];
};

/** What the pages of a plan are made from, in the words of some labels. */
export function benchInput(
  { site, currency }: PlanFilesOptions,
  labels: Labels,
): BenchInput & { readonly target: Paper } {
  const files = filesFor(site);
  const [target = 'letter'] = site.paper;
  const styles = printStyles(files, 'kit');
  return { site, currency, labels, styles, renderer: createRenderer(files), target };
}

/**
 * Writes a plan: `index.html`, its data and its PDFs. What needs no browser is written before one is asked.
 * @throws Unwritable, BrowserMissing or PrintFault, each with a remedy in one line.
 */
export async function putPlan(
  { site, out, browser }: PlanFilesOptions,
  { folder, date, screen, data, prints }: PlanPages,
): Promise<readonly Written[]> {
  await checkWritable(out);
  const files = filesFor(site);
  const at = (name: string): string => `${folder}/${name}`;
  const written = await putFiles(out, [
    { path: at('index.html'), bytes: typeset(screen.html, files) },
    ...data.map(({ name, bytes }) => ({ path: at(name), bytes })),
  ]);
  const printer = openPrinter({ browser });
  try {
    const printed: OutputFile[] = [];
    for (const { name, page } of prints) {
      const { html, title } = page;
      const bytes = await printer.pdf(html, { title, date, fonts: fontsFor(html, files) });
      printed.push({ path: at(name), bytes });
    }
    return [...written, ...(await putFiles(out, printed))];
  } finally {
    await printer.close();
  }
}
