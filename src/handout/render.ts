import Handlebars from 'handlebars';
import type { Site } from '../project/model.ts';
import type { Labels, Speak } from '../words/labels.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import type { Styles } from './css.ts';

/** The texts of the templates, by file name without its ending. */
type Templates = {
  readonly pages: ReadonlyMap<string, string>;
  readonly partials: ReadonlyMap<string, string>;
};

/** What every template prints first, in a language by its BCP 47 tag; `scripts` by address. */
export function headOf(
  { language }: { readonly language: string },
  styles: SafeHtml,
  page: { readonly title: string; readonly description: string; readonly scripts?: readonly string[] },
): object {
  const { title, description, scripts = [] } = page;
  return { language, documentTitle: title, description, styles, scripts };
}

export type Renderer = {
  /**
   * A page as HTML. `{{say "key"}}` speaks through `say`; every other value is escaped unless it is `SafeHtml`.
   * @throws when the page is not there or asks for something its model does not have: both are bugs of ours.
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

/** Marks that would print a value unescaped. No template of ours needs them; see `SafeHtml`. */
const UNESCAPED = /\{\{\{|\{\{~?&/u;

/** Compiles the templates once. Strict: a name that a model lacks is an error, and prototypes are out of reach. */
export function createRenderer({ pages, partials }: Templates): Renderer {
  const handlebars = Handlebars.create();
  handlebars.registerHelper('say', (key: string, options: Handlebars.HelperOptions) => {
    const say = options.data.say as Speak;
    return say(key, options.hash);
  });
  for (const [name, text] of partials) handlebars.registerPartial(name, escapingOnly(name, text));
  const compiled = new Map([...pages].map(([name, text]) => [name, compile(handlebars, name, text)]));
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

function compile(handlebars: typeof Handlebars, name: string, text: string): Handlebars.TemplateDelegate {
  return handlebars.compile(escapingOnly(name, text), {
    strict: true,
    noEscape: false,
    knownHelpers: { say: true },
    knownHelpersOnly: true,
  });
}

function escapingOnly(name: string, text: string): string {
  if (UNESCAPED.test(text)) throw new Error(`the template "${name}" prints a value unescaped`);
  return text;
}
