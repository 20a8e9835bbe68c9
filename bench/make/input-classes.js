// Every class of input that may be large, each as a workspace's files for a number of its items.

/** The largest file that is read: 2 MB, and a little less for what stands round the items. */
const MOST_BYTES = 1_990_000;

const STOCK = '    cream: { name: Cream cardstock, sheet: 8 1/2 x 11, caliper: 0.01 in }';
const CARD = '    card: { stock: cream, cut: 4 x 5 }';

const times = (count, each) => Array.from({ length: count }, (_, index) => each(index));
const lines = (count, each) => times(count, each).join('\n');

/** A sheet: what is said of it, all optional, and its text. */
function sheet({ head = '', stock = '', pieces = CARD, measurements = '', text = 'A card.' } = {}) {
  const block = [STOCK, stock].filter(Boolean).join('\n');
  const parts = [
    'title: Card',
    head,
    'measurements:',
    '  unit: in',
    '  stock:',
    block,
    '  pieces:',
    pieces,
    measurements,
  ];
  return `---\n${parts.filter(Boolean).join('\n')}\n---\n${text}\n\n## Cut it\nCut :piece[card].\n`;
}

const only = (parts) => ({ 'card/sheet.md': sheet(parts) });
const layer = (rest) => `{ stock: cream, cut: 1 x 1, on: ${rest} }`;

/** An item of text again and again. */
const text = (item, between = '\n\n') => ({
  sizes: [20, 200, 2000].map((kilobytes) =>
    Math.floor((MOST_BYTES * kilobytes) / 2000 / (item.length + between.length)),
  ),
  files: (count) => only({ text: times(count, () => item).join(between) }),
});

/** Items of a number. Files that would pass the bound are told from the others by the run itself. */
const counted = (sizes, files) => ({ sizes, files });
const HUNDREDS = [20, 200, 2000];
const THOUSANDS = [300, 3000, 30_000];

/** @type {Record<string, { sizes: readonly number[], files: (count: number) => Record<string, string> }>} */
export const CLASSES = {
  nothing: counted([1], () => only()),
  prose: text('Cut the long side first and keep the scraps; a ruler with a cork back stays where it is put.'),
  'one paragraph': text('Cut the long side first and keep the scraps.', ' '),
  'measurements in prose': text('Cut it 4 x 5 in, then 1/8 in more.', ' '),
  'emphasis in one paragraph': text('*a* **b** _c_', ' '),
  'emphasis that never ends': text('*a _b', ' '),
  'code spans': text('`a`', ' '),
  brackets: text('[', ''),
  tables: {
    ...text('| one | 2 in |', '\n'),
    files: (count) => only({ text: `| a | b |\n| - | - |\n${lines(count, () => '| one | 2 in |')}` }),
  },
  lists: text('- Cut it along the line.', '\n'),
  links: text('[the maker](https://example.org/a)', ' '),
  'nested quotes': text('> > > > > > > > a'),
  'pictures that are missing': text('![a](photos/a.jpg)', ' '),
  'directives in one paragraph': text(':piece[card]', ' '),
  'directives misspelled': text(':piece[cord]', ' '),
  tips: text(':::tip\nUse a new blade.\n:::'),
  html: text('<b>bold</b>', ' '),
  footnotes: {
    sizes: THOUSANDS,
    files: (count) =>
      only({
        text: `${times(count, (n) => `See[^${n}].`).join(' ')}\n\n${lines(count, (n) => `[^${n}]: Note.\n`)}`,
      }),
  },
  steps: counted(THOUSANDS, (count) =>
    only({ text: `A card.\n\n${lines(count, (n) => `## Step ${n} :step{minutes=1}\nCut it.\n`)}` }),
  ),
  supplies: counted(THOUSANDS, (count) =>
    only({ head: `supplies:\n${lines(count, (n) => `  - { item: Tool ${n}, kind: tool }`)}` }),
  ),
  stock: counted(HUNDREDS, (count) =>
    only({ stock: lines(count, (n) => `    paper${n}: { name: Paper ${n}, sheet: 8 1/2 x 11 }`) }),
  ),
  pieces: counted(HUNDREDS, (count) =>
    only({
      pieces: `${CARD}\n${lines(count, (n) => `    p${n}: { stock: cream, cut: 1 x ${1 + (n % 7)} }`)}`,
    }),
  ),
  'pieces used in prose': counted(HUNDREDS, (count) =>
    only({
      pieces: `${CARD}\n${lines(count, (n) => `    p${n}: { stock: cream, cut: 1 x ${1 + (n % 7)} }`)}`,
      text: times(count, (n) => `Cut :piece[p${n}].`).join('\n\n'),
    }),
  ),
  'layers side by side': counted(HUNDREDS, (count) =>
    only({
      pieces: `    card: { stock: cream, cut: 8 x 10 }\n${lines(
        count,
        (n) =>
          `    p${n}: { stock: cream, cut: 1/16 x 1/16, on: card, at: { left: ${1 + (n % 50)}/8, top: ${1 + Math.floor(n / 50)}/8 } }`,
      )}`,
    }),
  ),
  'layers that overlap': counted(HUNDREDS, (count) =>
    only({ pieces: `${CARD}\n${lines(count, (n) => `    p${n}: ${layer('card')}`)}` }),
  ),
  'layers one on the other': counted(HUNDREDS, (count) =>
    only({ pieces: `${CARD}\n${lines(count, (n) => `    p${n}: ${layer(n ? `p${n - 1}` : 'card')}`)}` }),
  ),
  trays: counted(HUNDREDS, (count) =>
    only({
      pieces: `${CARD}\n${lines(count, (n) => `    p${n}: { stock: cream, form: tray, inside: 1 x ${2 + (n % 3)} x 1 }`)}`,
    }),
  ),
  'score lines': counted(HUNDREDS, (count) =>
    only({
      pieces: `${CARD}\n    long: { stock: cream, cut: 8 x 10, score: [{ from: left, at: [${times(count, (n) => `${n + 1}/${count > 200 ? 256 : 32}`).join(', ')}] }] }`,
    }),
  ),
  openings: counted(HUNDREDS, (count) =>
    only({
      pieces: `    card: { stock: cream, cut: 8 x 10, openings: { ${times(
        count,
        (n) =>
          `o${n}: { size: 1/16 x 1/16, at: { left: ${1 + (n % 50)}/8, top: ${1 + Math.floor(n / 50)}/8 } }`,
      ).join(', ')} } }`,
    }),
  ),
  impressions: counted(HUNDREDS, (count) =>
    only({
      pieces: `    card: { stock: cream, cut: 8 x 10, impressions: [${times(
        count,
        (n) =>
          `{ stamp: wheat, size: 1/16 x 1/16, at: { left: ${1 + (n % 50)}/8, top: ${1 + Math.floor(n / 50)}/8 } }`,
      ).join(', ')}] }`,
    }),
  ),
  variants: counted(HUNDREDS, (count) =>
    only({
      measurements: `  variants:\n${lines(count, (n) => `    v${n}: { card.cut: 4 x ${5 + (n % 5)} }`)}`,
    }),
  ),
  'unknown keys': counted(THOUSANDS, (count) => only({ head: lines(count, (n) => `unknown${n}: yes`) })),
  'repeated keys': counted(THOUSANDS, (count) => only({ head: lines(count, () => 'level: beginner') })),
  'keys of a piece': counted(THOUSANDS, (count) =>
    only({ pieces: `    card: { stock: cream, cut: 4 x 5, ${times(count, (n) => `k${n}: 1`).join(', ')} }` }),
  ),
  tags: counted(THOUSANDS, (count) =>
    only({ head: `tags: [${times(count, (n) => `tag ${n}`).join(', ')}]` }),
  ),
  'aliases of one value': counted(THOUSANDS, (count) =>
    only({ head: `summary: &a A card.\ntags: [${times(count, () => '*a').join(', ')}]` }),
  ),
  'aliases in a chain': counted([20, 200, 2000], (count) =>
    only({ head: lines(count, (n) => `x${n}: &a${n} [${n ? `*a${n - 1}, *a${n - 1}` : 'a'}]`) }),
  ),
  'use: chains': counted(HUNDREDS, (count) => ({
    'card/sheet.md': sheet({ pieces: `    card: { use: shared.p${count - 1} }` }),
    'shared/all.yaml': `unit: in\nstock:\n${STOCK.slice(2)}\npieces:\n${lines(count, (n) => (n ? `  p${n}: { use: shared.p${n - 1} }` : '  p0: { stock: shared.cream, cut: 4 x 5 }'))}\n`,
  })),
  'shared stock': counted(THOUSANDS, (count) => ({
    ...only(),
    'shared/all.yaml': `unit: in\nstock:\n${lines(count, (n) => `  s${n}: { name: Paper ${n}, sheet: 8 1/2 x 11 }`)}\n`,
  })),
  'ledger entries': counted([60, 600, 6000], (count) => ({
    ...only(),
    'card/revisions.yaml': ledger(count),
  })),
  'days without a session': counted(THOUSANDS, (count) => ({
    ...only(),
    'site.yaml': `sessions:\n  every: week\n  on: thursday\n  at: "18:30"\n  from: 2026-10-01\n  except: [${times(count, (n) => `20${30 + (n % 60)}-01-${String(1 + (n % 28)).padStart(2, '0')}`).join(', ')}]\n`,
  })),
};

/** Revisions that alternate between two sizes. */
function ledger(count) {
  const lengths = (size) =>
    `{ inch: [ 4 in, ${size} in ], metric: [ 102 mm, ${size === 5 ? 127 : 152} mm ] }`;
  const revision = (n) => `  - number: ${n + 1}
    date: 2026-10-01
    own: inch
    changes:
      - { piece: card, what: size, before: ${lengths(n % 2 ? 5 : 6)}, after: ${lengths(n % 2 ? 6 : 5)} }`;
  return `revisions:\n${lines(count, revision)}\nstate:\n  pieces:\n    - { piece: card, what: size, inch: [ 4 in, 5 in ], metric: [ 102 mm, 127 mm ] }\n  steps: []\n`;
}
