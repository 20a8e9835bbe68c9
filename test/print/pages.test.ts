import { readdirSync, readFileSync } from 'node:fs';
import { basename, join, relative } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { examine } from '../../src/examine/examine.ts';
import { heroOf, layerViews, netViews } from '../../src/handout/drawings.ts';
import type { Setting } from '../../src/handout/setting.ts';
import { stepViews } from '../../src/handout/steps.ts';
import { loadWorkspace } from '../../src/shape/workspace.ts';
import { all, parseMarkup, textOf } from '../handout/markup.ts';
import { settingFor } from '../handout/sample.ts';
import { madeDemo } from '../made-demo.ts';
import { hostNotes, oneLine, textsThatTell } from './host-notes.ts';
import { fillOf, inkOf, isInColumn, lettersBox, markBoxes, wordBox } from './page-fill.ts';
import { type Pdf, type PdfPage, readPdf, readPdfTexts } from './read-pdf.ts';
import { namesLacking, type StepView } from './step-names.ts';

const PAPERS = ['letter', 'a4', 'large-print'] as const;

/** What is set larger than this in millimeters is a heading; and no text in a drawing is as large. */
const HEADING = 4.2;
/** The same in large print, whose text is set in 18 points, 6.35 mm. */
const LARGE_HEADING = 7;

type Handout = {
  readonly slug: string;
  readonly paper: (typeof PAPERS)[number];
  readonly pdf: Pdf;
  /** The words that stand over lists, set as large as these. */
  readonly listHeads: readonly string[];
};

/** Of every project, on each paper. */
const printed: Handout[] = [];
/** Those in type of the usual size. */
let handouts: readonly Handout[] = [];
let root = '';
let site = '';

beforeAll(async () => {
  const demo = await madeDemo();
  root = join(demo, 'projects');
  site = join(demo, 'dist', 'site');
  for (const slug of readdirSync(root, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? [entry.name] : [],
  )) {
    if (slug === 'shared') continue;
    const sheet = parseMarkup(readFileSync(join(site, slug, 'index.html'), 'utf8'));
    const listHeads = all(sheet, '.list-head').map(textOf);
    for (const paper of PAPERS) {
      const file = join(site, slug, `${slug}-${paper}.pdf`);
      printed.push({ slug, paper, pdf: await readPdf(readFileSync(file)), listHeads });
    }
  }
  handouts = printed.filter(({ paper }) => paper !== 'large-print');
});

/** What is said of every page that is not as it ought to be. */
function faults(
  each: (page: PdfPage, index: number, handout: Handout) => readonly string[],
  among = handouts,
): readonly string[] {
  return among.flatMap((handout) =>
    handout.pdf.pages.flatMap((page, index) =>
      each(page, index, handout).map((fault) => `${handout.slug} ${handout.paper} ${index + 1}: ${fault}`),
    ),
  );
}

describe('the pages of every handout of the demo', () => {
  it('are four at the most', () => {
    expect(handouts.length).toBeGreaterThan(40);
    const long = handouts.filter(({ pdf: { pages } }) => pages.length > 4);
    const found = long.map(({ slug, paper, pdf: { pages } }) => `${slug} ${paper}: ${pages.length}`);
    expect(found).toEqual([]);
  });

  /** At most twice the pages is aimed at; type of 18 points has nearly three times the area of 10½. */
  it('are at most twice as many in large print', () => {
    const pagesOf = (of: readonly Handout[]) => of.reduce((sum, { pdf: { pages } }) => sum + pages.length, 0);
    const large = printed.filter(({ paper }) => paper === 'large-print');
    const letter = printed.filter(({ paper }) => paper === 'letter');
    expect(pagesOf(large)).toBeLessThanOrEqual(2 * pagesOf(letter));
    const long = large.filter(({ slug, pdf: { pages } }) => {
      const usual = pagesOf(letter.filter((other) => other.slug === slug));
      return pages.length > 2 * usual + 2;
    });
    expect(long.map(({ slug, pdf }) => `${slug}: ${pdf.pages.length}`)).toEqual([]);
  });

  it('are half full at the least, the last one a third', () => {
    const found = faults((page, index, { pdf: { pages } }) => {
      const fill = fillOf(page);
      return fill < (index === pages.length - 1 ? 1 / 3 : 1 / 2) ? [`${Math.round(fill * 100)} %`] : [];
    }, printed);
    expect(found).toEqual([]);
  });

  /** The title is set in 25.2 points, or in 24 where a page is full, in large print in 30.6: a browser that finds a line too long for its page prints all pages smaller. */
  it('are printed at the size they are set in', () => {
    const titles = printed.map(({ slug, paper, pdf: { pages } }) => {
      const largest = Math.max(...(pages[0]?.words ?? []).map(({ size }) => size));
      const off = Math.min(...[25.2, 24, 30.6].map((points) => Math.abs(largest - (points / 72) * 25.4)));
      return { slug, paper, off };
    });
    expect(titles.filter(({ off }) => off > 0.05)).toEqual([]);
  });

  /** What a printer leaves blank: the quarter of an inch of the demo's `site.yaml`. */
  it('are printed no nearer to the edge than a printer reaches', () => {
    const near = faults((page) => {
      const boxes = [...page.words.map(lettersBox), ...markBoxes(page)];
      return boxes.flatMap(({ x, y, width, height }) => {
        const least = Math.min(x, y, page.widthMm - x - width, page.heightMm - y - height);
        return least < 6.35 ? [`${least.toFixed(1)} mm`] : [];
      });
    }, printed);
    expect(near).toEqual([]);
  });

  it('have no heading at the foot of a column', () => {
    expect(printed.filter(({ listHeads }) => listHeads.length > 0).length).toBeGreaterThan(3);
    const found = faults((page, _, { paper, listHeads }) => {
      const ink = inkOf(page);
      const least = paper === 'large-print' ? LARGE_HEADING : HEADING;
      const headings = page.words.filter(({ text, size }) => size > least || listHeads.includes(text));
      return headings.flatMap((heading) => {
        const box = wordBox(heading);
        const column = isInColumn('left', box, page) ? 'left' : 'right';
        const isFollowed = ink.some(
          (other) => isInColumn(column, other, page) && other.y > box.y + box.height + 1,
        );
        return isFollowed ? [] : [heading.text];
      });
    }, printed);
    expect(found).toEqual([]);
  });

  it('have drawings as large as their column or the page lets them be', async () => {
    let count = 0;
    const usual = (await sheets()).filter(({ paper }) => paper !== 'large-print');
    const small = usual.flatMap(({ slug, paper, setting, hero, steps }) => {
      const inColumn = [...layerViews(setting, hero), ...steps.flatMap(({ figures }) => figures)];
      const nets = netViews(setting).map(
        ({ drawing, isWide }) => [drawing, isWide ? ROOM.page : ROOM.column] as const,
      );
      return [...nets, ...inColumn.map((each) => [each, ROOM.column] as const)].flatMap(([each, width]) => {
        count++;
        return smallDrawings(each, width).map((fault) => `${slug} ${paper}: ${fault}`);
      });
    });
    expect(small).toEqual([]);
    expect(count).toBeGreaterThan(120);
    const tiny = '<svg width="40mm" height="30mm"><text>Scale 1:2</text></svg>';
    expect([smallDrawings(tiny, 84), smallDrawings(tiny, 60)].map(({ length }) => length)).toEqual([1, 0]);
  });

  /** A drawing too wide for its place is set smaller, its lettering with it: 3 mm, in large print 6.35. */
  it('set every drawing that says its scale at that scale', () => {
    let count = 0;
    const shrunk = faults(({ words }, _, { paper }) => {
      const own = paper === 'large-print' ? 6.35 : 3;
      const said = words.filter(({ text }) => SCALES.some(([, scale]) => text.startsWith(scale)));
      count += said.length;
      const wrong = said.filter(({ size }) => Math.abs(size / own - 1) > 0.01);
      return wrong.map(({ text, size }) => `${text}, in letters of ${size.toFixed(2)} mm`);
    }, printed);
    expect(shrunk).toEqual([]);
    expect(count).toBeGreaterThan(150);
  });

  it('write what a step calls a panel or flap in the drawings of that step', async () => {
    let count = 0;
    const lacking = (await sheets()).flatMap(({ slug, paper, setting, steps }) =>
      setting.project.steps.flatMap(({ prose }, index) => {
        const view = steps[index];
        const names = view ? namesLacking(setting, prose, view) : { lacking: [], count: 0 };
        count += names.count;
        return names.lacking.map((name) => `${slug} ${paper}, step ${index + 1}: ${name}`);
      }),
    );
    expect(lacking).toEqual([]);
    expect(count).toBeGreaterThan(90);
  });

  /**
   * Fractions are set in small figures. Measured on paper at 2,400 dots an inch they are 0.45 of the type's size high, as the
   * figures of type of 0.65 of its size are; 5½ points is our own least, for which we know no source.
   */
  it('have fractions whose small figures are those of 5½ points or more, in their text and in their drawings', async () => {
    const least = 5.5 / 0.65;
    const text = faults(({ words }) =>
      words.flatMap(({ text, size }) => {
        const points = (size / 25.4) * 72;
        return text.includes('⁄') && points < least ? [`${points.toFixed(1)} pt`] : [];
      }),
    );
    expect(text).toEqual([]);
    let count = 0;
    const drawn = (await sheets()).flatMap(({ slug, paper, setting, hero, steps }) => {
      const shown = [...layerViews(setting, hero), ...steps.flatMap(({ figures }) => figures)];
      const nets = netViews(setting).map(({ drawing }) => drawing);
      const markup = parseMarkup([...nets, ...shown].map(String).join(''));
      const lines = all(markup, 'text').filter((line) => all(line, '.fraction').length > 0);
      count += lines.length;
      // Millimeters, as in the drawing.
      const sizes = lines.map(({ attributes }) => Number(attributes['font-size']) * (72 / 25.4));
      return sizes.filter((size) => !(size >= least)).map((size) => `${slug} ${paper}: ${size} pt`);
    });
    expect(drawn).toEqual([]);
    expect(count).toBeGreaterThan(700);
  });

  it('keep each step and its pictures on one page', async () => {
    let count = 0;
    const parted = (await sheets()).flatMap(({ slug, paper, steps }) => {
      const pdf = printed.find((each) => each.slug === slug && each.paper === paper)?.pdf;
      return steps.flatMap(({ title, figures }) => {
        const shown = figures.flatMap(alternativesOf);
        count += shown.length;
        const page = pdf?.pages.find((each) =>
          tight(headingsOn(each)).includes(tight(textOf(parseMarkup(String(title))))),
        );
        return shown
          .filter((alternative) => !page?.alternatives.map(tight).includes(tight(alternative)))
          .map((alternative) => `${slug} ${paper}: ${alternative}`);
      });
    });
    expect(parted).toEqual([]);
    expect(count).toBeGreaterThan(50);
  });
});

describe('what is published of the demo', () => {
  it('has no note of the demonstrator in it', async () => {
    const notes = readdirSync(root, { recursive: true, encoding: 'utf8' })
      .filter((path) => basename(path) === 'sheet.md')
      .flatMap((path) => hostNotes(readFileSync(join(root, path), 'utf8')));
    expect(notes.length).toBeGreaterThanOrEqual(13);
    const texts = await everyText();
    expect(texts.size).toBeGreaterThan(100);
    // The search finds what is there: a step of a sheet, in its page and in its PDF.
    const step = 'half a squeeze leaves a whisker';
    expect(textsThatTell([step], texts)).toEqual(
      expect.arrayContaining(
        ['index.html', 'harbour-light-bookmark-a4.pdf'].map((name) => join('harbour-light-bookmark', name)),
      ),
    );
    expect(textsThatTell(notes, new Map([['told', `as ${notes[0]} does`]]))).toEqual(['told']);
    expect(textsThatTell(notes, texts)).toEqual([]);
  });
});

/** The text of every file of the site, by its path in it: of PDFs what is read, of pages what is not markup. */
async function everyText(): Promise<ReadonlyMap<string, string>> {
  const known = new Map(printed.map(({ slug, paper, pdf }) => [join(slug, `${slug}-${paper}.pdf`), pdf]));
  const texts = new Map<string, string>();
  for (const entry of readdirSync(site, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = relative(site, join(entry.parentPath, entry.name));
    const bytes = readFileSync(join(site, path));
    const pages = known.get(path)?.pages.map(({ text }) => text);
    const text = path.endsWith('.pdf')
      ? oneLine((pages ?? (await readPdfTexts(bytes))).join('\n'))
      : bytes.toString('utf8').replace(/<[^>]*>/gu, ' ');
    texts.set(path, text);
  }
  return texts;
}

/** The scales that drawings are set at, largest first, and the words of each. */
const SCALES: readonly (readonly [number, string])[] = [
  [1, 'Scale 1:1'],
  [2 / 3, 'Two-thirds of actual size'],
  ...[2, 3, 4, 5, 6].map((by) => [1 / by, `Scale 1:${by}`] as const),
];

/** Millimeters: a column's width, a page's, and half a page's height, on A4, the narrower, and on Letter, the lower. */
const ROOM = { column: 84, page: 176, height: 123 };

/** That a drawing fills under 60 % of its width, though at the next larger scale (labels grown as well) it would have room. */
function smallDrawings(markup: unknown, width: number): readonly string[] {
  return all(parseMarkup(String(markup)), 'svg').flatMap((svg) => {
    const said = textOf(svg);
    const own = SCALES.findIndex(([, words]) => said.includes(words));
    const [scale, larger] = [SCALES[own]?.[0], SCALES[own - 1]?.[0]];
    const [across, down] = [svg.attributes.width, svg.attributes.height].map((side) =>
      Number.parseFloat(side ?? ''),
    );
    if (scale === undefined || larger === undefined || across === undefined || down === undefined) return [];
    const growth = larger / scale;
    const hasRoom = across * growth <= width && down * growth <= ROOM.height;
    return across < 0.6 * width && hasRoom ? [`${across} × ${down} mm, ${SCALES[own]?.[1]}`] : [];
  });
}

/** What each handout is set from. */
type Sheet = {
  readonly slug: string;
  readonly paper: (typeof PAPERS)[number];
  readonly setting: Setting;
  readonly hero: ReturnType<typeof heroOf>;
  readonly steps: readonly StepView[];
};

let read: Promise<readonly Sheet[]> | undefined;

/** Read once for all tests. */
function sheets(): Promise<readonly Sheet[]> {
  read ??= readSheets();
  return read;
}

async function readSheets(): Promise<readonly Sheet[]> {
  const workspace = await loadWorkspace(root, { namedFrom: root });
  return examine(workspace).flatMap(({ project, editions }) => {
    const proses = [project.introduction, ...project.steps.map(({ prose }) => prose)];
    const pictures = proses.flatMap((prose) => prose.pictures);
    const placed = new Map(pictures.map(({ path }) => [path.value, { src: 'x', width: 4, height: 3 }]));
    return PAPERS.map((paper) => {
      const setting = settingFor({ project, editions, site: workspace.site }, paper, placed);
      const hero = heroOf(setting);
      const steps = stepViews(setting, hero) as readonly StepView[];
      return { slug: project.slug, paper, setting, hero, steps };
    });
  });
}

function headingsOn({ words }: PdfPage): string {
  return words.flatMap(({ text, size }) => (size > HEADING ? [text] : [])).join('');
}

function alternativesOf(figure: unknown): readonly string[] {
  const root = parseMarkup(String(figure));
  return [
    ...all(root, 'img').map(({ attributes }) => attributes.alt),
    ...all(root, 'svg').map(({ attributes }) => attributes['aria-label']),
  ].flatMap((said) => (typeof said === 'string' ? [said] : []));
}

function tight(text: string): string {
  return text.replace(/[\s\u00ad]+/gu, '');
}
