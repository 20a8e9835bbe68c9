import { type PrintSetting, type TemplatePage, templatePages } from '../drawing/actual-size.ts';
import type { Page } from '../drawing/pages.ts';
import { sharedPages, smallPieces } from '../drawing/shared-page.ts';
import { templateSvg } from '../drawing/template-file.ts';
import type { Editions } from '../edition/editions.ts';
import type { Ledger } from '../project/ledger/ledger.ts';
import type { Paper } from '../project/model.ts';
import { revisionTitle } from '../words/changes.ts';
import type { Labels } from '../words/labels.ts';
import { sheetNamed } from '../words/names.ts';
import { SafeHtml } from '../words/safe-html.ts';
import { shownText } from './measured-text.ts';
import { templatePieces } from './piece-sheets.ts';
import { type PageInput, pageHtml } from './render.ts';
import { drawnWays, paperTitle, type Setting, settingOf } from './setting.ts';

/** What an actual-size template is printed from. */
type TemplateInput = PageInput & {
  readonly editions: Editions;
  readonly paper: Paper;
  readonly ledger: Ledger;
};

/** The actual-size template on one paper, as a document to be printed; undefined when no piece needs one. */
export function templateHtml(input: TemplateInput): string | undefined {
  const { editions, labels, paper } = input;
  const setting = settingOf(editions, paper, labels, new Map());
  const { project } = setting;
  const print = printOf(setting, input);
  const ids = templatePieces(editions);
  const small = smallPieces(editions, ids, print, setting.drawings);
  const pages = [
    ...ids.filter((id) => !small.includes(id)).flatMap((id) => pagesOf(setting, [id], print)),
    ...(small.length > 0 ? pagesOf(setting, small, print) : []),
  ];
  const leaves = pages.flatMap((each) =>
    each.pages.map((page, index) => leafOf(index === 0 ? each.name : undefined, page)),
  );
  if (leaves.length === 0) return undefined;
  const title = paperTitle(editions, labels, 'pdf-template');
  const sizes = pages.flatMap((each) => each.pages.map(({ page }) => page));
  const description = project.summary ? shownText(project.summary.value, setting) : title;
  return pageHtml(input, 'template', { title, description, css: leafCss(sizes) }, { leaves });
}

function printOf({ project, voice }: Setting, { site, paper, ledger }: TemplateInput): PrintSetting {
  const revision = ledger.revisions.at(-1);
  return {
    paper,
    margin: site.bench.printerMargin.value,
    project: project.title.value,
    state: revision ? revisionTitle(revision, voice) : '',
  };
}

/** The pages of one sheet of a piece, or of several small ones together, and how they are called; apart for variants that have them differently. */
function pagesOf(
  setting: Setting,
  ids: readonly string[],
  print: PrintSetting,
): readonly { readonly name: string; readonly pages: readonly TemplatePage[] }[] {
  const [first = '', ...others] = ids;
  const draw = ({ editions, drawings }: Setting) => {
    const pages =
      others.length === 0
        ? templatePages(editions, first, print, drawings)
        : sharedPages(editions, ids, print, drawings);
    return pages.length === 0 ? undefined : { pages, svg: pages.map(({ drawing }) => drawing.svg).join() };
  };
  return drawnWays(setting, draw).map(({ drawing: { pages }, one: { voice } }) => ({
    name: voice.list(ids.map((id) => sheetNamed(id, voice.say))).text,
    pages,
  }));
}

/** A stand-alone drawing at 1:1, and the variant it is of, as files are named, if it isn't that of all. */
type TemplateFile = { readonly svg: string; readonly variant: string | undefined };

/** Those of one piece, in the edition the demonstrator wrote, if that is printed; one for each variant that has it differently. */
export function templateFiles(editions: Editions, id: string, labels: Labels): readonly TemplateFile[] {
  const setting = settingOf(editions, 'large-print', labels, new Map());
  const draw = (one: Setting) => {
    const { shown, say } = one.drawings;
    const svg = templateSvg(one.editions, id, { shown, say });
    return svg === undefined ? undefined : { svg, variant: one.project.variant?.slug };
  };
  return drawnWays(setting, draw).map(({ drawing: { svg, variant }, of }) => ({
    svg,
    variant: of === undefined ? undefined : variant,
  }));
}

function leafOf(heading: string | undefined, { page, drawing }: TemplatePage): object {
  return { heading, name: leafName(page), drawing: SafeHtml.vouched(drawing.svg) };
}

function leafName({ paper, landscape }: Page): string {
  return `${paper}-${landscape ? 'landscape' : 'portrait'}`;
}

/** A named page for every size of paper used, so that each drawing is as large as its page, to the micrometer. */
function leafCss(pages: readonly Page[]): string {
  const rules = pages.map((page) => {
    const name = leafName(page);
    const [width, height] = [`${page.width}mm`, `${page.height}mm`];
    return `@page ${name} { size: ${width} ${height}; margin: 0; }\n.leaf-${name} { page: ${name}; width: ${width}; height: ${height}; }`;
  });
  return [...new Set(rules)].join('\n');
}
