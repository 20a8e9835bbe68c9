import type { Block } from './pages.ts';

/** The texts of a small workspace, by their paths. */
type Texts = Readonly<Record<string, string>>;

/** What a fragment of the docs leaves to the sheet that it stands in. */
type Parts = { readonly block?: string; readonly head?: string; readonly steps?: string };

export const SHEET = 'example/sheet.md';

/** The names in what shared files the docs speak of. */
const CUPBOARD = `stock:
  harbour: { name: Harbour blue, sheet: 12 x 12 }
  moss: { name: Moss cardstock, sheet: 8 1/2 x 11 }
supplies:
  bone-folder: { item: Bone folder, kind: tool }
pieces:
  seed-box: { stock: shared.moss, form: clip-top box, inside: 3 1/2 x 1 x 4 3/4 }
`;

/** The papers that the docs speak of, where a fragment names none itself. */
const STOCK = `  stock:
${['cream', 'moss', 'fern', 'kraft', 'white', 'brick'].map((name) => `    ${name}: { sheet: [8 1/2 x 11, 12 x 12] }\n`).join('')}`;

/** What fragments stick something on, where they have no such piece themselves. */
const BASES = {
  box: '    box: { stock: moss, form: clip-top box, inside: 3 1/2 x 1 x 4 3/4 }\n',
  card: '    card: { stock: moss, form: single-fold card, size: 4 x 5 }\n',
};

/** A workspace in which a block of the docs stands where its first line says that it belongs. */
export function wholeWorkspace({ text, language }: Block): Texts {
  if (text.startsWith('---\n')) return { [SHEET]: text };
  if (language === 'markdown') return sheetOf({ steps: text });
  const [first = ''] = text.split('\n');
  const [, shared] = /^# (shared\/\S+)/u.exec(first) ?? [];
  if (shared !== undefined) return { ...sheetOf({}), [shared]: text };
  if (first === 'revisions:') return { ...sheetOf({}), 'example/revisions.yaml': text };
  if (first === 'supplies:') return sheetOf({ head: text });
  if (first.startsWith('  - ')) return sheetOf({ head: `supplies:\n${text}` });
  if (first === 'measurements:') return sheetOf({ block: text.slice(first.length + 1) });
  if (first.startsWith('    ')) return sheetOf({ block: `  pieces:\n${text}` });
  return first.startsWith(' ') ? sheetOf({ block: text }) : { ...sheetOf({}), 'site.yaml': text };
}

function sheetOf({ block = '', head = '', steps = '' }: Parts): Texts {
  const [within, after] = atFirst(/^\w/mu, block);
  const unit = within.includes('  unit:') ? '' : '  unit: in\n';
  const stock = sectionOf(within, 'stock') === '' ? STOCK : '';
  const pieces = sectionOf(within, 'pieces') || piecesOf(sectionOf(within, 'stock'));
  const others = within.replace(`  pieces:\n${pieces}`, '');
  const all = `${basesOf(`${pieces}${steps}`)}${pieces}`;
  const uses = namesIn(all).map((name) => `## The ${name}\nTake the :piece[${name}].\n`);
  const measured = `measurements:\n${unit}${stock}${all === '' ? '' : `  pieces:\n${all}`}${others}`;
  return {
    'shared/cupboard.yaml': CUPBOARD,
    'example/photos/flat.jpg': 'a picture',
    'fonts/noto-sans-hebrew.ttf': 'a font',
    [SHEET]: `---\ntitle: Example\n${measured}${head}${after}---\nAn example.\n\n${steps}\n${uses.join('\n')}`,
  };
}

/** A text before and from where a pattern is found first. */
function atFirst(pattern: RegExp, text: string): readonly [before: string, from: string] {
  const index = text.search(pattern);
  return index < 0 ? [text, ''] : [text.slice(0, index), text.slice(index)];
}

/** What stands under a key of the measurement block. */
function sectionOf(block: string, key: string): string {
  const [, section = ''] = new RegExp(`^ {2}${key}:.*\\n((?: {3,}.*\\n)*)`, 'mu').exec(block) ?? [];
  return section;
}

function namesIn(section: string): string[] {
  return [...section.matchAll(/^ {4}([\w-]+):/gmu)].map(([, name = '']) => name);
}

/** A piece of each paper. */
function piecesOf(stock: string): string {
  return namesIn(stock)
    .map((name) => `    of-${name}: { stock: ${name}, cut: 2 x 3 }\n`)
    .join('');
}

/** The bases that a fragment speaks of and has not. */
function basesOf(text: string): string {
  const needed = Object.entries(BASES).filter(
    ([name]) =>
      new RegExp(String.raw`(?:on: |of=|\[)${name}\b`, 'u').test(text) && !namesIn(text).includes(name),
  );
  return needed.map(([, piece]) => piece).join('');
}
