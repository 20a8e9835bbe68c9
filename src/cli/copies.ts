import { join, relative, resolve } from 'node:path';
import { checkWritable, putFiles, readIfThere } from '../make/files.ts';
import { Length } from '../measure/length.ts';
import { type Copies, type CopyLayout, LAYOUTS, layCopies } from '../print/copies.ts';
import { paperNameOf } from '../project/paper-sizes.ts';
import { slugOf } from '../project/slug.ts';
import { sayCount } from '../proof/words.ts';
import { type CommandRun, type CommonOptions, Refusal } from './terminal.ts';
import { commandFor } from './workspace-folder.ts';

const PRINTS = ['letter', 'a4', 'large-print'];
const MOST = 500;
const POINTS_PER_INCH = 72;
const MM_PER_INCH = 25.4;

type CopiesOptions = CommonOptions & {
  readonly count: string;
  readonly print?: string;
  readonly layout: string;
  readonly out: string;
};

/** `sheetwright copies SLUG --count N`: one PDF for the copy shop, of the handout that `make` made. */
export const run: CommandRun<CopiesOptions> = async ([slug = '', named], options, terminal) => {
  const number = copiesAsked(options.count);
  const layout = LAYOUTS.find((each) => each === options.layout);
  if (!layout) throw new Refusal(`--layout is one of ${LAYOUTS.join(', ')}, not "${options.layout}"`);
  if (slugOf(slug) !== slug) throw new Refusal(`"${slug}" is no project's name`);
  const out = resolve(terminal.cwd, options.out);
  const { print, pdf } = await madeHandout(out, slug, options, named);
  await checkWritable(out);
  const copies = await layCopies(pdf, number, layout);
  if (!copies)
    throw new Refusal(`the ${print} handout of "${slug}" is damaged: ${remedy(slug, options, named)}`);
  const path = `host/${slug}-copies/${slug}-${print}-${number}-${layout}.pdf`;
  await putFiles(out, [{ path, bytes: copies.pdf }]);
  if (!options.quiet) {
    terminal.stdout.write(
      `${relative(terminal.cwd, join(out, path))}: ${sayCount(number, 'copy', 'copies')} on ${sayCount(copies.sheets, 'sheet')} of ${sayPaper(copies.sheet)}\n${ASK[layout]}\n`,
    );
  }
  return 0;
};

/** What to ask the shop for. */
const ASK: Readonly<Record<CopyLayout, string>> = {
  single: 'Print on both sides, flipped on the long edge, at 100 %. Each copy begins on a new sheet.',
  'two-up': 'Print on both sides, flipped on the short edge, at 100 %. Pages 1 and 2 lie beside each other.',
  booklet: 'Print on both sides, flipped on the short edge, at 100 %. Fold each copy in the middle.',
};

function copiesAsked(text: string): number {
  const number = /^\d{1,3}$/u.test(text) ? Number(text) : 0;
  if (number < 1 || number > MOST) throw new Refusal(`--count is a number from 1 to ${MOST}, not "${text}"`);
  return number;
}

/** The handout that is asked for; the first of them that was made, if none is. @throws Refusal when it is not there. */
async function madeHandout(
  out: string,
  slug: string,
  options: CopiesOptions,
  named: string | undefined,
): Promise<{ readonly print: string; readonly pdf: Uint8Array }> {
  const { print: asked } = options;
  if (asked !== undefined && !PRINTS.includes(asked))
    throw new Refusal(`--print is one of ${PRINTS.join(', ')}, not "${asked}"`);
  for (const print of asked === undefined ? PRINTS : [asked]) {
    const pdf = await readIfThere(join(out, 'site', slug, `${slug}-${print}.pdf`));
    if (pdf) return { print, pdf };
  }
  const which = asked === undefined ? 'no handout' : `no ${asked} handout`;
  throw new Refusal(`there is ${which} of "${slug}" in ${out} yet: ${remedy(slug, options, named)}`);
}

function remedy(slug: string, { out }: CopiesOptions, named: string | undefined): string {
  const elsewhere = out === 'dist' ? [] : ['--out', out];
  return `run ${commandFor('make', named, ['--only', slug, ...elsewhere])} first`;
}

/** Paper as a shop calls it, from its size in points: `A3` by its whole millimeters, any other in inches. */
function sayPaper({ width, height }: Copies['sheet']): string {
  const name = paperNameOf({ width: inMillimeters(width), height: inMillimeters(height) });
  return name?.toUpperCase() ?? `${inches(width)} x ${inches(height)} in`;
}

function inMillimeters(points: number): Length {
  return Length.of(Math.round((points / POINTS_PER_INCH) * MM_PER_INCH), 1, 'mm');
}

/** Points as inches of at most two decimals: `8.5`, `8.27`. */
function inches(points: number): string {
  return (points / POINTS_PER_INCH).toFixed(2).replace(/\.?0+$/u, '');
}
