import { createRequire } from 'node:module';
import type Handlebars from 'handlebars';
import runtime from 'handlebars/runtime.js';
import type { Site } from '../project/model.ts';
import { isFromRight } from '../words/direction.ts';
import { dropSoftHyphens } from '../words/hyphens.ts';
import { type Labels, type Say, type Speak, speaker } from '../words/labels.ts';
import { semicolon } from '../words/typographic.ts';
import { compiledTemplates, STRICTLY } from './compiled-templates.ts';
import { type Styles, styleElements } from './css.ts';

/** The texts of the templates, by file name without its ending. */
type Templates = {
  readonly pages: ReadonlyMap<string, string>;
  readonly partials: ReadonlyMap<string, string>;
};

export type Renderer = {
  /**
   * A page as HTML. `{{say "key"}}` speaks through `say`; every other value is escaped unless it is `SafeHtml`.
   * @throws when the page is not there or asks for something its model does not have: both are our own bugs.
   */
  readonly render: (page: string, model: object, say: Speak) => string;
};

/** What every page is made with. */
export type PageInput = {
  readonly site: Site;
  readonly labels: Labels;
  readonly renderer: Renderer;
  readonly styles: Styles;
};

/** What every template prints first: `css` is of this very page, `scripts` are by address. */
export type PageHead = {
  readonly title: string;
  readonly description: string;
  readonly css?: string;
  readonly scripts?: readonly string[];
};

/** A page as HTML, in the language of its labels: its head, and what its template asks for besides. */
export function pageHtml(input: PageInput, template: string, head: PageHead, own: object): string {
  const { labels, renderer, styles } = input;
  const { title, description, css = '', scripts = [] } = head;
  const { language, asked = language } = labels;
  const printed = {
    language,
    isFromRight: isFromRight(asked),
    documentTitle: dropSoftHyphens(title),
    description: dropSoftHyphens(description),
    styles: styleElements(styles, css),
    scripts,
  };
  return renderer.render(template, { ...printed, ...own }, speaker(labels));
}

/** Marks that would print a value unescaped. None of our templates needs them; see `SafeHtml`. */
const UNESCAPED = /\{\{\{|\{\{~?&/u;

/** Takes up the templates once. Strict: a name that a model lacks is an error, and prototypes are out of reach. */
export function createRenderer({ pages, partials }: Templates): Renderer {
  const handlebars = handlebarsFor([...pages.values(), ...partials.values()]);
  handlebars.registerHelper('say', (key: string, options: Handlebars.HelperOptions) => {
    const say = options.data.say as Speak;
    return say(key, options.hash);
  });
  handlebars.registerHelper('semicolon', (options: Handlebars.HelperOptions) =>
    semicolon(options.data.say as Say),
  );
  const templateOf = (name: string, text: string): Handlebars.TemplateDelegate => {
    const compiled = compiledTemplates.get(escapingOnly(name, text));
    return compiled ? handlebars.template(compiled) : handlebars.compile(text, STRICTLY);
  };
  for (const [name, text] of partials) handlebars.registerPartial(name, templateOf(name, text));
  const compiled = new Map([...pages].map(([name, text]) => [name, templateOf(name, text)]));
  return {
    render: (page, model, say) => {
      const template = compiled.get(page);
      if (!template) throw new Error(`there is no page template "${page}"`);
      return template(model, {
        data: { say },
        allowProtoMethodsByDefault: false,
        allowProtoPropertiesByDefault: false,
      });
    },
  };
}

function escapingOnly(name: string, text: string): string {
  if (UNESCAPED.test(text)) throw new Error(`the template "${name}" prints a value unescaped`);
  return text;
}

/** What runs compiled templates; with what compiles them, where one is not: it was changed since the program was built. */
function handlebarsFor(texts: readonly string[]): typeof Handlebars {
  const isCompiled = texts.every((text) => compiledTemplates.has(text));
  // The package has no types for its runtime, which is a part of the whole.
  const loaded: unknown = isCompiled ? runtime : createRequire(import.meta.url)('handlebars');
  return (loaded as typeof Handlebars).create();
}
