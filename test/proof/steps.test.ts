import { describe, expect, it } from 'vitest';
import { sheetWith } from './sheet-with.ts';
import { blamed, findingsOf, ofRule } from './workspace.ts';

const PIECES = 'card: { stock: cream, cut: 4 x 5 }';

describe('missing-supply', () => {
  const missing = (language: string, text: string, supplies = '[Papier]'): (string | undefined)[] =>
    ofRule('missing-supply', {
      head: `lang: ${language}\nsupplies: ${supplies}`,
      pieces: PIECES,
      body: `## 1\n${text} :piece[card]\n`,
    }).map(blamed);

  it.each<[string, string, string[]]>([
    ['en', 'Work it with the bone folder, then with a craft knife.', ['bone folder', 'craft knife']],
    [
      'en',
      'Press the stamp on the ink pad. Round the corners with the corner-rounder.',
      ['corner-rounder', 'ink pad'],
    ],
    ['en', 'Take the bone folder. The bone folder lies there.', ['bone folder']],
    ['en', 'Fold it without a bone folder.', []],
    ['en', 'Fold the bone. Leave the folder.', []],
    ['en', 'Glue it with the glue gun', ['glue gun']],
    ['de', 'Mit dem Falzbein nacharbeiten, mit dem Cuttermesser schneiden.', ['Falzbein', 'Cuttermesser']],
    ['de', 'Auf das Stempelkissen drücken. Ohne Falzbein geht es nicht.', ['Stempelkissen']],
    ['fr', 'Marquer le pli au plioir.', ['plioir']],
    ['nl', 'Strijk met het vouwbeen en snijd met het hobbymes.', ['vouwbeen', 'hobbymes']],
    ['es', 'Marcar el doblez con la plegadera.', ['plegadera']],
    ['pt', 'Use a bone folder.', []],
  ])('in %s: %s', (language, text, expected) => {
    expect(missing(language, text).toSorted()).toEqual(expected.toSorted());
  });

  it.each<[string, string]>([
    ['a bone folder', '[{ item: Teflon bone folder, kind: tool }]'],
    ['a bone folder', '[{ item: A spoon, instead: a bone folder }]'],
    ['a craft knife', '[{ item: Small scalpel, kind: tool }]'],
    ['an ink pad', '[{ item: Moss green, kind: ink }]'],
    ['a corner rounder', '[{ item: Corner rounding punch, kind: punch }]'],
  ])('says nothing of %s where the supplies are %s', (tool, supplies) => {
    expect(missing('en', `Take ${tool}.`, supplies)).toEqual([]);
  });

  it.each<[string, string, string[]]>([
    ['en', 'Stamp it in black ink and let it dry.', ['ink']],
    ['de', 'Mit schwarzer Tinte stempeln.', ['Tinte']],
    ['fr', 'Tamponner à l’encre noire.', ['encre']],
    ['en', 'Tie on the pink ribbon, inked or not.', []],
  ])('in %s: %s asks for an ink', (language, text, expected) => {
    expect(missing(language, text)).toEqual(expected);
  });

  it('tells a sheet with no supplies of the first tool alone', () => {
    const body = '## 1\nTake a craft knife, then a bone folder to :piece[card].\n';
    const found = ofRule('missing-supply', { pieces: PIECES, body });
    expect(found.map((each) => `${blamed(each)}: ${each.message}`)).toEqual([
      'craft knife: "craft knife" is used here, but the sheet lists no supplies',
    ]);
  });

  it('says nothing of a sheet whose head, and so its list, cannot be read', () => {
    const sheet = sheetWith({
      head: 'supplies: [Bone folder]',
      pieces: PIECES,
      body: '## 1\nTake a bone folder.\n',
    });
    const broken = sheet.replace('title:', 'title: one: two:');
    expect(broken).not.toBe(sheet);
    expect(findingsOf(broken).map(({ rule }) => rule)).toEqual(['broken-yaml']);
  });

  it('says nothing of the introduction, nor of what is for the demonstrator', () => {
    const body =
      'All you need is a bone folder.\n\n## Fold\nFold :piece[card].\n\n:::host\nBring a glue gun.\n:::\n';
    expect(ofRule('missing-supply', { head: 'supplies: [Paper]', pieces: PIECES, body })).toEqual([]);
  });
});

describe('steps-too-long', () => {
  const found = (minutes: string, ...steps: string[]): string[] =>
    ofRule('steps-too-long', {
      head: minutes,
      pieces: PIECES,
      body: steps.map((step) => `## Do :step{${step}}\nTake :piece[card].\n`).join('\n'),
    }).map(({ message, severity }) => `${severity}: ${message}`);

  it.each<[string, string[], string[]]>([
    [
      'minutes: 30',
      ['minutes=40', 'minutes=60'],
      ['warning: the project takes 30 minutes, but its steps add up to 100'],
    ],
    ['minutes: 30', ['minutes=40 ahead', 'minutes=30 dry=12h'], []],
    ['minutes: 30', ['minutes=33'], []],
    ['minutes: 30', ['minutes=34'], ['warning: the project takes 30 minutes, but its steps add up to 34']],
    ['minutes: 1h30', ['minutes=90'], []],
    ['level: easy', ['minutes=90'], []],
  ])('%s with %j', (minutes, steps, expected) => {
    expect(found(minutes, ...steps)).toEqual(expected);
  });
});

describe('missing-project', () => {
  const files = { 'seed-box/sheet.md': '---\ntitle: Seed box\nmeasurements: { pieces: {} }\n---\n' };

  it.each<[string, string[]]>([
    ['[it](../seed-box/)', []],
    ['[it](../seed-box)', []],
    ['[it](../seed-box/index.html#step-2)', []],
    ['[it](../seed-bx/)', ['there is no project "seed-bx" to link to; write ../seed-box/']],
    [
      '[it][other]\n\n[other]: ../tin/',
      ['there is no project "tin" to link to; take the link out, or put its address right'],
    ],
    [
      '[list](../) [host](../../) [top](#step-1) [far](https://example.org/tin/) [mail](mailto:a@example.org)',
      [],
    ],
    ['[file](../shared.ics) [deep](../seed-box/photos/a.jpg)', []],
  ])('%s', (text, expected) => {
    const found = ofRule(
      'missing-project',
      { pieces: PIECES, body: `## Do\nTake :piece[card]. ${text}\n` },
      files,
    );
    expect(found.map(({ message, remedy }) => `${message}; ${remedy}`)).toEqual(expected);
  });
});

describe('unknown-allergen', () => {
  const found = (language: string, allergens: string): string[] =>
    ofRule('unknown-allergen', {
      head: `lang: ${language}`,
      pieces: PIECES,
      more: `holds: { item: Cake, food: yes, allergens: [${allergens}] }`,
    }).map((finding) => `${blamed(finding)}: ${finding.remedy}`);

  // Regulation (EU) No 1169/2011, Annex II, in the words of each language's text, from memory; sulphites shortened.
  it.each([
    ['en', 'Milk, eggs, soy, sulfites, rye, hazelnuts'],
    [
      'de',
      'glutenhaltiges Getreide, Krebstiere, Eier, Fische, Erdnüsse, Sojabohnen, Milch, Schalenfrüchte, Sellerie, Senf, Sesamsamen, Sulfite, Lupinen, Weichtiere, milk',
    ],
    [
      'fr',
      'céréales contenant du gluten, crustacés, œufs, poissons, arachides, soja, lait, fruits à coque, céleri, moutarde, graines de sésame, sulfites, lupin, mollusques',
    ],
    [
      'nl',
      'glutenbevattende granen, schaaldieren, eieren, vis, "pinda\'s", sojabonen, melk, noten, selderij, mosterd, sesamzaad, sulfieten, lupine, weekdieren',
    ],
    [
      'es',
      'cereales con gluten, crustáceos, huevos, pescado, cacahuetes, soja, leche, frutos de cáscara, apio, mostaza, granos de sésamo, sulfitos, altramuces, moluscos',
    ],
  ])('takes them in %s', (language, allergens) => {
    expect(found(language, allergens)).toEqual([]);
  });

  it.each([
    ['de', 'Erdnüse', 'Erdnüse: write "Erdnüsse"'],
    ['en', 'Milch', 'Milch: write "milk"'],
    ['fr', 'moutard', 'moutard: write "moutarde"'],
  ])('in %s not %s', (language, allergen, expected) => {
    expect(found(language, allergen)).toEqual([expected]);
  });
});

/** The words are from memory: how instructions in each language say it. */
describe('layer-before-base', () => {
  const early = (language: string, first: string): (string | undefined)[] =>
    ofRule('layer-before-base', {
      head: `lang: ${language}`,
      pieces: `${PIECES}\nmat: { stock: cream, cut: 3 x 4, on: card }\nlabel: { stock: cream, cut: 2 x 1, on: mat }`,
      body: `## 1\n${first}\n\n## 2\n:piece[mat] :piece[card]\n`,
    }).map(blamed);

  it.each([
    ['en', 'Now glue down the :piece[label].'],
    ['de', 'Kleben Sie nun das :piece[label] in die Mitte.'],
    ['de', 'Das :piece[label] aufkleben.'],
    ['fr', 'Puis collez l’:piece[label] au milieu.'],
    ['fr', 'Coller la :piece[label].'],
    ['es', 'Pega la :piece[label] en el centro.'],
    ['nl', 'Plak nu het :piece[label] in het midden.'],
    ['nl', 'Het :piece[label] vastplakken.'],
  ])('is found in %s: %s', (language, first) => {
    expect(early(language, first)).toEqual(['label']);
  });

  it.each([
    ['en', 'Stick tape to the :piece[label].'],
    ['en', 'Cut the :piece[label]. Stick nothing yet.'],
    ['de', 'Das Klebeband auf das :piece[label] legen, noch nicht kleben.'],
    ['de', 'Zum Kleben die :piece[label] bereitlegen.'],
    ['fr', 'Avant de coller la :piece[label], tamponnez-la.'],
    ['es', 'Antes de pegar la :piece[label], estampa el borde.'],
    ['nl', 'Leg de lijm naast het :piece[label].'],
    ['pt', 'Stick the :piece[label].'],
  ])('is not found in %s: %s', (language, first) => {
    expect(early(language, first)).toEqual([]);
  });
});

describe('layer-before-base in one step', () => {
  it.each([
    ['Stick the :piece[label] on, then stick the :piece[mat] on the :piece[card].', ['label']],
    ['Stick the :piece[label] on. Stick the :piece[mat] on the :piece[card].', ['label']],
    ['Stick the :piece[label] on the :piece[mat], then stick the :piece[mat] on the :piece[card].', []],
    ['Stick the :piece[label] on. Let the :piece[mat] dry.', []],
    ['Take the mat. Stick the :piece[label] on, then stick the :piece[mat] on the :piece[card].', []],
  ])('%s', (text, expected) => {
    const pieces = `${PIECES}\nmat: { stock: cream, cut: 3 x 4, on: card }\nlabel: { stock: cream, cut: 2 x 1, on: mat }`;
    expect(ofRule('layer-before-base', { pieces, body: `## 1\n${text}\n` }).map(blamed)).toEqual(expected);
  });
});

describe('missing-knife', () => {
  const slit = (at: string, head = ''): (string | undefined)[] =>
    ofRule('missing-knife', {
      head,
      pieces: `card:
  stock: cream
  cut: 6 x 6
  score: [{ from: left, at: [2, 4] }, { from: top, at: [2, 4] }]
  slit: [${at}]
  folds: { A|B: flat, B|C: flat, 1|2: flat, 2|3: flat }`,
    }).map(blamed);

  it.each([
    ['within the paper', 'A|B 2', ['A|B 2']],
    ['from an edge', 'A|B 1', []],
    ['from an edge on past a crossing', 'A|B 1-2', []],
    ['that meets one from an edge', 'A|B 2, 1|2 A', []],
  ])('a slit %s', (_, at, expected) => {
    expect(slit(at)).toEqual(expected);
  });

  it.each([
    ['supplies:\n  - { item: Craft knife, kind: tool }', []],
    ['supplies:\n  - { item: Pointed scissors, kind: tool, instead: a scalpel }', []],
    ['supplies:\n  - { item: Scissors, kind: tool }', ['A|B 2']],
    ['lang: de\nsupplies:\n  - { item: Bastelmesser, kind: tool }', []],
  ])('with %s', (head, expected) => {
    expect(slit('A|B 2', head)).toEqual(expected);
  });
});

describe('a comma that may be a decimal one', () => {
  it.each([
    ['[10,5]', ['error unclear-comma: 10,5']],
    ['[52,5, 105, 157,5]', ['error unclear-comma: 52,5', 'error unclear-comma: 157,5']],
    ['[52,5, 105, 104]', ['error unclear-comma: 52,5', 'warning score-order: 104']],
    ['[5,25, 105,50]', ['error unclear-comma: 5,25', 'error unclear-comma: 105,50']],
    ['[20,215]', ['error score-outside: 215']],
    ['[180,25]', ['error unclear-comma: 180,25']],
    ['[50,60]', ['warning unclear-comma: 50,60']],
  ])('is asked about, and nothing that follows from it is said: %s', (at, expected) => {
    const pieces = `card: { stock: cream, cut: 210 x 140, score: [{ from: left, at: ${at} }] }`;
    const found = findingsOf(sheetWith({ unit: 'mm', pieces, stock: 'cream: { sheet: 210 x 297 }' }));
    const said = found.filter(
      ({ rule }) =>
        rule === 'unclear-comma' || ['score-order', 'score-doubled', 'score-outside'].includes(rule),
    );
    expect(said.map((each) => `${each.severity} ${each.rule}: ${blamed(each)}`)).toEqual(expected);
  });
});

describe('unclear-comma', () => {
  it.each<[string, string, string[]]>([
    ['cm', '[2,5, 10]', ['2,5']],
    ['cm', '[2,5, 10, 17,5]', ['2,5', '17,5']],
    ['cm', '[2, 5, 10]', []],
    ['cm', '[2,5,10]', []],
    ['cm', '[2.5, 10]', []],
    ['in', '[2,5, 10]', []],
    ['cm', '[2,105 mm, 14]', []],
    ['cm', '[10,5]', ['10,5']],
    ['mm', '[10,5 cm]', ['10,5 cm']],
    ['mm', '[52, 105]', []],
    ['in', '[10,5 cm]', []],
  ])('in %s: %s', (unit, at, expected) => {
    const found = ofRule('unclear-comma', {
      unit,
      pieces: `card: { stock: cream, cut: 21 x 10, score: [{ from: left, at: ${at} }] }`,
    });
    expect(found.map(blamed)).toEqual(expected);
  });
});

describe('not-all-round', () => {
  it.each<[string, string, string, string[]]>([
    ['en', '3 3/4 x 4 1/4, on: card', 'all around', ['mat']],
    ['en', '3 3/4 x 4 1/4, on: card', 'on the card', []],
    ['en', '3 3/4 x 4 3/4, on: card', 'all round', []],
    // The same on three sides, which is said as one border.
    ['en', '3 3/4 x 4 1/4, on: card, at: { top: 1/8 }', 'all round', []],
    // What passes its base is told of by another rule, unless it is meant to.
    ['en', '4 1/4 x 4 3/4, on: card', 'all round', []],
    ['en', '4 1/4 x 4 3/4, on: card, overhang: yes', 'all round', ['mat']],
    ['en', '2 x 2, shape: circle, on: card', 'all round', ['mat']],
    ['en', '2 x 2, shape: circle, on: card, turn: 45', 'all round', []],
    ['de', '3 3/4 x 4 1/4, on: card', 'ringsum', ['mat']],
    ['fr', '3 3/4 x 4 1/4, on: card', 'tout autour', ['mat']],
    ['es', '3 3/4 x 4 1/4, on: card', 'alrededor', ['mat']],
    ['nl', '3 3/4 x 4 1/4, on: card', 'rondom', ['mat']],
    ['nl', '3 3/4 x 4 1/4, on: card', 'rondomheen', []],
  ])('in %s, { cut: %s }: %s', (language, mat, words, expected) => {
    const found = ofRule('not-all-round', {
      head: `lang: ${language}`,
      pieces: `${PIECES}\nmat: { stock: cream, cut: ${mat} }`,
      body: `## 1\n:piece[card] :piece[mat], :reveal[mat] ${words}.\n`,
    });
    expect(found.map(blamed)).toEqual(expected);
  });
});
