import { type TemplatePage, templatePages } from '../drawing/actual-size.ts';
import type { Page } from '../drawing/pages.ts';
import { templateSvg } from '../drawing/template-file.ts';
import { type Editions, shownEditions } from '../edition/editions.ts';
import type { Paper } from '../project/model.ts';
import type { Labels } from '../words/labels.ts';
import { sheetNamed } from '../words/names.ts';
import { SafeHtml } from '../words/safe-html.ts';
import { voiceOf } from '../words/voice.ts';
import { shownText } from './measured-text.ts';
import { templatePieces } from './piece-sheets.ts';
import { type PageInput, pageHtml } from './render.ts';
import { paperTitle, settingOf } from './setting.ts';

/** What an actual-size template is printed from. */
type TemplateInput = PageInput & { readonly editions: Editions; readonly paper: Paper };

/** The actual-size template on one paper, as a document to be printed; undefined when no piece needs one. */
export function templateHtml(input: TemplateInput): string | undefined {
  const { editions, site, labels, paper } = input;
  const setting = settingOf(editions, paper, labels, new Map());
  const { project, voice, drawings } = setting;
  const margin = site.bench.printerMargin.value;
  const pages = templatePieces(editions).map((id) => ({
    id,
    pages: templatePages(editions, id, { paper, margin }, drawings),
  }));
  const leaves = pages.flatMap((each) =>
    each.pages.map((page, index) => leafOf(index === 0 ? sheetNamed(each.id, voice.say) : undefined, page)),
  );
  if (leaves.length === 0) return undefined;
  const title = paperTitle(editions, labels, 'pdf-template');
  const sizes = pages.flatMap((each) => each.pages.map(({ page }) => page));
  const description = project.summary ? shownText(project.summary.value, setting) : title;
  return pageHtml(input, 'template', { title, description, css: leafCss(sizes) }, { leaves });
}

/** The stand-alone drawing of one piece at 1:1, in the edition the demonstrator wrote, if that is printed. */
export function templateFile(editions: Editions, id: string, labels: Labels): string | undefined {
  return templateSvg(editions, id, { shown: shownEditions(editions), say: voiceOf(labels).say });
}

function leafOf(heading: string | undefined, { page, drawing }: TemplatePage): object {
  return { heading, name: leafName(page), drawing: SafeHtml.vouched(drawing.svg) };
}

function leafName({ paper, landscape }: Page): string {
  return `${paper}-${landscape ? 'landscape' : 'portrait'}`;
}

/** A named page for every size of paper used, so that each drawing is as large as its page, to the micrometre. */
function leafCss(pages: readonly Page[]): string {
  const rules = pages.map((page) => {
    const name = leafName(page);
    const [width, height] = [`${page.width}mm`, `${page.height}mm`];
    return `@page ${name} { size: ${width} ${height}; margin: 0; }\n.leaf-${name} { page: ${name}; width: ${width}; height: ${height}; }`;
  });
  return [...new Set(rules)].join('\n');
}
