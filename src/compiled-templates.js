// Writes src/handout/compiled-templates.ts: every template as a function, so that a make needs no compiler. Runs before
// every build, check and test; what it writes is not committed. A function is found by the text it was made of: a template
// that has changed since is compiled when a page asks for it.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import Handlebars from 'handlebars';

/** A name that a model lacks is an error, and there are no helpers but ours. */
const STRICTLY = {
  strict: true,
  noEscape: false,
  knownHelpers: { say: true, semicolon: true },
  knownHelpersOnly: true,
};

const compiled = ['', 'partials/'].flatMap((folder) => {
  const path = new URL(`../templates/${folder}`, import.meta.url);
  const names = readdirSync(path).filter((name) => name.endsWith('.hbs'));
  return names.sort().map((name) => {
    const text = readFileSync(new URL(name, path), 'utf8');
    return `  [${JSON.stringify(text)}, ${Handlebars.precompile(text, structuredClone(STRICTLY))}],`;
  });
});
writeFileSync(
  new URL('handout/compiled-templates.ts', import.meta.url),
  [
    '// @ts-nocheck',
    '/** How templates are compiled. */',
    `export const STRICTLY: CompileOptions = ${JSON.stringify(STRICTLY)};`,
    '',
    '/** Of each template’s text the function it was compiled to. Written by src/compiled-templates.js. */',
    'export const compiledTemplates: ReadonlyMap<string, TemplateSpecification> = new Map([',
    ...compiled,
    ']);',
    '',
  ].join('\n'),
);
