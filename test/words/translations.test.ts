import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { cautionsFor } from '../../src/handout/cautions.ts';
import { readLabels } from '../../src/make/package-files.ts';
import { Length } from '../../src/measure/length.ts';
import { allergensIn } from '../../src/proof/allergens.ts';
import { forms } from '../../src/shape/forms/index.ts';
import { outlines } from '../../src/shape/outlines/index.ts';
import { sheetsOf } from '../../src/shape/sheets.ts';
import { closingKey } from '../../src/words/form-words.ts';
import { dropSoftHyphens } from '../../src/words/hyphens.ts';
import { type Labels, speaker } from '../../src/words/labels.ts';
import { keysOf, labelsFor } from '../../src/words/languages.ts';
import { measuresFor } from '../../src/words/measures.ts';
import { nameOf, partNamed } from '../../src/words/names.ts';
import { outlineKey } from '../../src/words/outlines.ts';
import { typographic } from '../../src/words/typographic.ts';
import { voiceOf } from '../../src/words/voice.ts';
import { sampleOf } from '../handout/sample.ts';
import { offersOf, printer, slugs } from '../make/offers.ts';

const all = readLabels();
const english = labelsIn('en');
/** Each says everything; a variety such as en-GB says only what it says otherwise. */
const others = [...all.keys()].filter((language) => language !== 'en' && !language.includes('-'));
const varieties = [...all.keys()].filter((language) => language.includes('-'));

function labelsIn(language: string): Labels {
  const labels = all.get(language);
  if (!labels) throw new Error(`no labels in ${language}`);
  return labels;
}

function placeholdersOf(text: string): string[] {
  return [...text.matchAll(/\{\w+\}/gu)].map(([placeholder]) => placeholder).toSorted();
}

/** The English a label translates: a plural that English has not is its usual plural. */
function originalOf(key: string): string {
  return english.texts.get(key) ?? english.texts.get(key.replace(/-(?:zero|two|few|many)$/u, '-other')) ?? '';
}

/** Every panel and sheet that the ready-made forms name. */
function formParts(): ReadonlySet<string> {
  const names = forms.flatMap((form) => {
    const settings = form.example.settings.join(', ');
    const { editions } = sampleOf(`unit: in\npieces:\n  box: { form: ${form.name}, ${settings} }`);
    return sheetsOf(editions.inch.shapes.nets, 'box').flatMap(({ name, net }) => [
      ...(name === undefined ? [] : [name]),
      ...net.panels.flatMap((panel) => panel.name ?? []),
    ]);
  });
  return new Set(names);
}

/** Labels that come with a form or an output: until somebody translates them they stand in English, and a note says so. */
const brought = new Set(
  offersOf(slugs[0] ?? '', ['letter', 'a4'])
    .flatMap(({ keys }) => keys)
    .concat(
      forms.map(closingKey),
      outlines.map(({ name }) => outlineKey(name)),
    ),
);
const isBrought = (key: string): boolean => key.startsWith('part-') || brought.has(key);
afterAll(() => printer.close());

it('there are the languages that are promised', () => {
  expect([...all.keys()].toSorted()).toEqual(['de', 'en', 'en-GB', 'es', 'fr', 'fr-CA', 'nl']);
});

it('a short list of labels that sets its marks otherwise says all of them so', () => {
  const spaced = [...labelsFor(all, 'fr-CA').labels.texts].filter(([, text]) => /\s[;!?]/u.test(text));
  expect(spaced.map(([key]) => key)).toEqual([]);
});

describe.each(others)('the labels in %s', (language) => {
  const { texts } = labelsIn(language);

  const known = keysOf(english, language);
  const missing = known.filter((key) => !texts.has(key));

  it('are those of English, each plural of the language included, and no others', () => {
    expect([...texts.keys()].filter((key) => !known.includes(key))).toEqual([]);
    expect(missing.filter((key) => !isBrought(key))).toEqual([]);
  });

  it('lack no words that all others have for what a form or an output brings', () => {
    const fellows = others.filter((other) => other !== language).map((other) => labelsIn(other).texts);
    expect(missing.filter((key) => fellows.every((each) => each.has(key)))).toEqual([]);
  });

  it('have the very placeholders of the English', () => {
    const wrong = [...texts].filter(
      ([key, text]) => placeholdersOf(text).join() !== placeholdersOf(originalOf(key)).join(),
    );
    expect(wrong).toEqual([]);
  });

  it('say something, without blanks at their ends', () => {
    expect([...texts].filter(([, text]) => text === '' || text !== text.trim())).toEqual([]);
  });

  it('are set as the language sets what people type: quotation marks, apostrophes, spaces', () => {
    const say = speaker(labelsFor(all, language).labels);
    const prose = [...texts].filter(([key]) => !/^(?:names|reads)-/u.test(key));
    const unlike = prose.filter(
      ([, text]) => dropSoftHyphens(typographic(text, say)) !== dropSoftHyphens(text),
    );
    expect(unlike).toEqual([]);
  });

  it('are translated: long ones are never the English', () => {
    const words = (text: string): number =>
      text.replace(/\{\w+\}|\S+:\/\/\S+/gu, '').match(/\p{L}{2,}/gu)?.length ?? 0;
    const same = [...texts].filter(([key, text]) => text === originalOf(key) && words(text) > 2);
    expect(same.map(([key]) => key)).toEqual([]);
  });

  it('have a name for every panel of the ready-made forms, unlike its neighbors’', () => {
    const say = speaker(labelsFor(all, language).labels);
    for (const part of formParts()) {
      expect(say.has(`part-${part}`) || /-\d+$/u.test(part), part).toBe(true);
      expect(partNamed(part, say)).not.toBe('');
    }
    const said = [...formParts()].map((part) => partNamed(part, say));
    expect(new Set(said).size).toBe(said.length);
  });

  it('name every allergen that a project may', () => {
    const { texts: own } = labelsIn(language);
    const absent = allergensIn('en').names.filter(
      (name) => !own.has(`allergen-${name.replaceAll(' ', '-')}`),
    );
    expect(absent).toEqual([]);
  });
});

describe.each(varieties)('the labels in %s', (language) => {
  const wider = labelsFor(all, language.split('-')[0] ?? '').labels.texts;

  it('are words that its language says otherwise, with the very placeholders', () => {
    const own = [...labelsIn(language).texts];
    expect(own.filter(([key, text]) => wider.get(key) === text || !wider.has(key))).toEqual([]);
    const wrong = own.filter(
      ([key, text]) => placeholdersOf(text).join() !== placeholdersOf(originalOf(key)).join(),
    );
    expect(wrong).toEqual([]);
    expect(labelsFor(all, language).missing).toEqual(labelsFor(all, language.split('-')[0] ?? '').missing);
  });
});

/** docs/words.md: a row a term, a column a language. */
const terms = readFileSync(new URL('../../docs/words.md', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => /^\| (?!English|---)/u.test(line))
  .map((line) => line.split('|').map((cell) => cell.trim()));

it.each(['en', 'de', 'fr', 'es', 'nl'])(
  'the word list has the words that the labels in %s have',
  (language) => {
    const said = [...labelsIn(language).texts.values()].join('\n').toLowerCase();
    const listed = terms.map((cells) => cells[1 + ['en', 'de', 'fr', 'es', 'nl'].indexOf(language)] ?? '');
    expect(listed.length).toBeGreaterThan(20);
    expect(listed.filter((term) => !said.includes(term.toLowerCase()))).toEqual([]);
  },
);

describe('the English labels', () => {
  it('call panels as their forms do', () => {
    const say = speaker(english);
    for (const part of formParts()) expect(partNamed(part, say)).toBe(nameOf(part));
  });
});

describe('supplies in every language', () => {
  const PIECE = 'unit: mm\npieces:\n  tag: { cut: 50 x 150 }\n';

  function called(language: string, item: string): string[] {
    const { project } = sampleOf(PIECE, '', `supplies:\n  - { item: "${item}", kind: tool }\n`);
    const cautions = cautionsFor(project, voiceOf(labelsIn(language)));
    return cautions.map(({ id }) => id).filter((id) => id !== 'blades');
  }

  /** Common practice, no source: what the thing is called in a shop. */
  it.each([
    ['de', 'Heißklebepistole', ['hot-glue']],
    ['de', 'Heißluftpistole', ['heat']],
    ['de', 'Embossing-Föhn', ['heat']],
    ['de', 'Stanzform Farn', ['press']],
    ['de', 'Sprühkleber oder Klebespray', ['solvents']],
    ['de', 'Teelicht', ['flames']],
    ['de', 'LED-Teelicht', []],
    ['de', 'Teelicht mit Batterie', []],
    ['de', 'Neodym-Magnete', ['small-parts']],
    ['de', 'Holzperlen', ['small-parts']],
    ['de', 'Black Ribbon', []],
    ['de', 'Papierschneider', []],
    ['de', 'Falzbein', []],
    ['de', 'Textmarker (Highlighter)', []],
    ['de', 'Kleberoller', []],
    ['de', 'Embossing-Ordner', []],
    ['de', 'Lackstift', []],
    ['de', 'Schneideunterlage', []],
    ['fr', 'Pistolet à colle', ['hot-glue']],
    ['fr', 'Pistolet à air chaud', ['heat']],
    ['fr', 'Bombe de vernis', ['solvents']],
    ['fr', 'Bougie', ['flames']],
    ['fr', 'Bougie à pile', []],
    ['fr', 'Attaches parisiennes', ['small-parts']],
    ['fr', 'Plioir', []],
    ['fr', 'Plaque de coupe', []],
    ['fr', 'Surligneur (highlighter)', []],
    ['fr', 'Roller de colle', []],
    ['fr', 'Plaque d’embossage', []],
    ['fr', 'Laque en bombe', ['solvents']],
    ['fr', 'Carton bombé', []],
    ['fr', 'Ruban en rouleau', []],
    ['es', 'Pistola de silicona', ['hot-glue']],
    ['es', 'Pistola de calor', ['heat']],
    ['es', 'Troqueladora', ['press']],
    ['es', 'Barniz en aerosol', ['solvents']],
    ['es', 'Velas pequeñas', ['flames']],
    ['es', 'Vela LED', []],
    ['es', 'Imanes', ['small-parts']],
    ['es', 'Plegadera', []],
    ['es', 'Base de corte', []],
    ['es', 'Marcador fluorescente (highlighter)', []],
    ['es', 'Pegamento en roller', []],
    ['es', 'Carpeta de embossing', []],
    ['es', 'Placa de corte', []],
    ['nl', 'Lijmpistool', ['hot-glue']],
    ['nl', 'Heteluchtpistool', ['heat']],
    ['nl', 'Stansmachine', ['press']],
    ['nl', 'Lijmspray', ['solvents']],
    ['nl', 'Waxinelichtje', ['flames']],
    ['nl', 'LED-waxinelichtje', []],
    ['nl', 'Splitpennen', ['small-parts']],
    ['nl', 'Patterned papers', []],
    ['nl', 'Vouwbeen', []],
    ['nl', 'Markeerstift (highlighter)', []],
    ['nl', 'Lijmroller', []],
    ['nl', 'Snijplaat', []],
    ['nl', 'Embossingmap', []],
    ['nl', 'Plakband', []],
  ])('in %s, %s, call for their cautions', (language, item, ids) => {
    expect(called(language, item)).toEqual(ids);
  });

  it.each(others)('in %s may also go by an English name', (language) => {
    expect(called(language, 'Hot glue gun')).toEqual(['hot-glue']);
    expect(called(language, 'Heat tool')).toEqual(['heat']);
  });
});

describe('figures', () => {
  const [inch, half] = [Length.of(3, 2, 'in'), Length.of(7, 2, 'mm')];
  const twins = [
    { inch, metric: half },
    { inch, metric: Length.of(4, 1, 'mm') },
    { inch, metric: Length.of(13, 2, 'mm') },
  ];
  const said = (language: string, grouping: 'sentence' | 'column'): string =>
    measuresFor(voiceOf(labelsIn(language)), ['metric', 'inch'], false)
      .alone(twins, 'metric', grouping)
      .toString()
      .replace(/<[^>]*>/gu, '');

  // CLDR: a comma is the decimal mark of all four.
  it.each([
    ['en', '3.5, 4, and 6.5 mm', '3.5, 4, 6.5 mm'],
    ['de', '3,5; 4 und 6,5 mm', '3,5; 4; 6,5 mm'],
    ['fr', '3,5\u00a0; 4 et 6,5 mm', '3,5\u00a0; 4\u00a0; 6,5 mm'],
    ['es', '3,5; 4 y 6,5 mm', '3,5; 4; 6,5 mm'],
    ['nl', '3,5; 4 en 6,5 mm', '3,5; 4; 6,5 mm'],
  ])('in %s have its decimal mark, and none is taken for the end of one', (language, sentence, column) => {
    expect([said(language, 'sentence'), said(language, 'column')]).toEqual([sentence, column]);
  });

  const spoken = (language: string, length: Length): string =>
    /class="spoken">([^<]*)</u.exec(
      measuresFor(voiceOf(labelsIn(language)), ['inch', 'metric'], true)
        .alone([{ inch: length, metric: length }], 'inch')
        .toString(),
    )?.[1] ?? '';

  it.each([
    ['en', 'one half inch', '3 quarters inch', '2 and 1 half inches'],
    ['de', '1 halber Zoll', '3 Viertel Zoll', '2 und 1 halber Zoll'],
    ['fr', '1 demi-pouce', '3 quarts de pouce', '2 pouces et 1 demi'],
    ['es', 'media pulgada', '3 cuartos de pulgada', '2 pulgadas y 1 medio'],
    ['nl', 'een halve inch', '3 kwart inch', '2 en 1 halve inch'],
  ])('of inches are spoken in %s', (language, half, quarters, mixed) => {
    const lengths = [Length.of(1, 2, 'in'), Length.of(3, 4, 'in'), Length.of(5, 2, 'in')];
    expect(lengths.map((length) => spoken(language, length))).toEqual([half, quarters, mixed]);
  });

  it('are one or many as the language has it: 1½ is singular in French alone', () => {
    // CLDR's plural rules: in French what is under 2 is one.
    const isOne = (language: string): boolean => speaker(labelsIn(language)).plural(1.5) === 'one';
    expect(['en', 'de', 'fr', 'es', 'nl'].filter(isOne)).toEqual(['fr']);
  });
});

/** Spaces of any kind as plain ones. */
const plain = (text: string): string => text.replace(/\s/gu, ' ');

it.each([
  ['en', 'Thursday, December 10, 2026', '1 hour 15 minutes'],
  ['de', 'Donnerstag, 10. Dezember 2026', '1 Stunde 15 Minuten'],
  ['fr', 'jeudi 10 décembre 2026', '1 heure 15 minutes'],
  ['es', 'jueves, 10 de diciembre de 2026', '1 hora y 15 minutos'],
  ['nl', 'donderdag 10 december 2026', '1 uur en 15 minuten'],
])('days and durations are told in %s', (language, day, duration) => {
  const voice = voiceOf(labelsIn(language));
  expect([plain(voice.day('2026-12-10')), plain(voice.duration(75))]).toEqual([day, duration]);
});
