import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { demoCopy, emptyFolder, type Outcome, sheetwright } from '../cli/terminal.ts';
import { readPdf } from '../print/read-pdf.ts';

const SOME = ['--attendees', '4', '--quiet'] as const;

/** A workspace of one small project, `card`. */
function workspace(measurements: string): string {
  const folder = emptyFolder();
  mkdirSync(join(folder, 'card'));
  writeFileSync(
    join(folder, 'card', 'sheet.md'),
    `---\ntitle: Card\nmeasurements:\n  unit: in\n${measurements}\n---\nA card.\n\n## Cut it\nCut :piece[a].\n`,
  );
  return folder;
}

const PLAIN =
  '  stock: { cream: { name: Cream, sheet: 8 1/2 x 11 } }\n  pieces: { a: { stock: cream, cut: 4 x 5 } }';

function kit(folder: string, ...argv: string[]): Promise<Outcome> {
  return sheetwright(folder, 'kit', ...argv);
}

describe('sheetwright kit', () => {
  it('prints JSON and nothing else, without a browser and without a file', async () => {
    const folder = workspace(PLAIN);
    const { code, out } = await kit(folder, 'card', '--attendees', '9', '--json', '--browser', '/nowhere');
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      project: 'card',
      attendees: 9,
      stocks: [{ total: 3, proven: true }],
    });
    expect(readdirSync(folder)).toEqual(['card']);
  });

  it('prints CSV and nothing else', async () => {
    const { code, out } = await kit(workspace(PLAIN), 'card', ...SOME, '--csv');
    expect(code).toBe(0);
    expect(out.startsWith('list,stock,layout,')).toBe(true);
    expect(out.endsWith('\r\n')).toBe(true);
    expect(out.replaceAll('\r\n', '')).not.toContain('\n');
  });

  it('prices a place, and says what a margin is', async () => {
    const folder = workspace(PLAIN.replace('sheet: 8 1/2 x 11', 'sheet: 8 1/2 x 11, price: 0.60'));
    const { out } = await kit(folder, 'card', '--attendees', '4', '--margin', '20%', '--json');
    // One sheet for four: 0.15 each; 0.1875 at 20 % of the price.
    expect(JSON.parse(out).cost).toMatchObject({
      perAttendee: '0.15',
      price: { marginPercent: 20, each: '0.19' },
    });
  });

  it('allows for a kerf and for trimmed edges, bare numbers in the unit of the project', async () => {
    const sheets = async (...options: string[]): Promise<number> => {
      const folder = workspace(PLAIN.replace('4 x 5', '4 1/4 x 5 1/2'));
      return JSON.parse((await kit(folder, 'card', ...SOME, '--json', ...options)).out).stocks[0].total;
    };
    expect(await sheets()).toBe(1);
    expect(await sheets('--kerf', '1/32')).toBe(2);
    expect(await sheets('--trim-margin', '1 mm')).toBe(2);
    expect(await sheets('--kerf', '0')).toBe(1);
  });

  it('writes pages and PDFs below host/, and says where', async () => {
    const folder = demoCopy();
    const { code, out, err } = await kit(folder, 'seed-packet-keeper', '--attendees', '24', '--labels');
    expect(code).toBe(0);
    expect(err).toMatch(/^planning Moss cardstock: \d+ found, at least \d+ needed$/mu);
    expect(out).toContain('Moss cardstock   24 sheets in 1 layout, proven the fewest');
    expect(out).toContain('5 files in dist/host/seed-packet-keeper-kit-24/');
    const home = join(folder, 'dist/host/seed-packet-keeper-kit-24');
    expect(readdirSync(home).sort()).toEqual([
      'index.html',
      'kit.csv',
      'kit.json',
      'seed-packet-keeper-kit-24.pdf',
      'seed-packet-keeper-labels.pdf',
    ]);
    expect(existsSync(join(folder, 'dist/site'))).toBe(false);
    const page = readFileSync(join(home, 'index.html'), 'utf8');
    expect(page).not.toMatch(/(?:src|href)="(?!#)/u);
    const pdf = await readPdf(readFileSync(join(home, 'seed-packet-keeper-kit-24.pdf')));
    expect(pdf).toMatchObject({ tagged: true, lang: 'en', title: 'Seed packet keeper: class kit for 24' });
    const text = pdf.pages.map((each) => each.text).join('\n');
    expect(text).toContain('Shopping list');
    expect(text).toContain('price unknown');
    expect(text).toContain('away from your body');
    const alternatives = pdf.pages.flatMap((each) => each.alternatives);
    expect(alternatives).toContainEqual(
      expect.stringMatching(
        /^A sheet of Moss cardstock, 8½ by 11 inches, cut into 1 box of 9½ by 6¾ inches\./u,
      ),
    );
    const labels = await readPdf(readFileSync(join(home, 'seed-packet-keeper-labels.pdf')));
    // Ten to a page, each beginning at the same height, for they are cut as a stack.
    expect(labels.pages).toHaveLength(3);
    const [first, ...others] = labels.pages.map(
      ({ words }) => words.find(({ text }) => text.startsWith('Kit'))?.y ?? Number.NaN,
    );
    for (const top of others) expect(top).toBeCloseTo(first ?? Number.NaN, 1);
    const bags = labels.pages.map((each) => each.text).join('\n');
    expect([...bags.matchAll(/Kit (\d+) of 24/gu)].map(([, number]) => Number(number))).toEqual(
      Array.from({ length: 24 }, (_, index) => index + 1),
    );
  });

  it.each([
    ['no attendees', ['--attendees', '0'], /--attendees takes a whole number from 1 to 1000, not "0"/u],
    ['fewer than none', ['--attendees', '-3'], /--attendees/u],
    ['parts of people', ['--attendees', '2.5'], /--attendees/u],
    ['far too many', ['--attendees', '5000'], /--attendees/u],
    ['a number in words', ['--attendees', 'twelve'], /--attendees/u],
    ['fewer spares than none', ['--attendees', '4', '--spares', '-1'], /--spares/u],
    ['no time', ['--attendees', '4', '--work', '0'], /--work/u],
    ['a margin of all the price', ['--attendees', '4', '--margin', '100'], /--margin/u],
    ['a kerf that is no length', ['--attendees', '4', '--kerf', 'thin'], /--kerf takes a length/u],
    ['two kinds of data', ['--attendees', '4', '--json', '--csv'], /not both/u],
  ])('refuses %s in one line', async (_, options, message) => {
    const { code, out, err } = await kit(workspace(PLAIN), 'card', ...options);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });

  it('asks for the number of attendees', async () => {
    const { code, err } = await kit(workspace(PLAIN), 'card');
    expect(code).toBe(2);
    expect(err).toContain('--attendees');
  });

  it('refuses a project that is not there, and names those that are', async () => {
    const { code, err } = await kit(workspace(PLAIN), 'crad', ...SOME);
    expect([code, err]).toEqual([2, 'sheetwright: no project named "crad" here; the projects are: card\n']);
  });

  it.each([
    [
      'a stock without a sheet size',
      PLAIN.replace(', sheet: 8 1/2 x 11', ''),
      /card\/sheet\.md:5:\d+ {2}error {2}cream has no sheet size.*\[cannot-be-kitted\]/u,
    ],
    [
      'a piece larger than every sheet',
      PLAIN.replace('4 x 5', '9 x 12'),
      /9 × 12 in.*\[piece-exceeds-sheet\]/u,
    ],
    [
      'a piece without a stock',
      PLAIN.replace('stock: cream, cut', 'cut'),
      /a names no stock.*\[cannot-be-kitted\]/u,
    ],
    ['a size that cannot be read', PLAIN.replace('4 x 5', '4 x 1/0'), /\[unreadable-length\]/u],
  ])('finds %s', async (_, measurements, message) => {
    const plain = await kit(workspace(measurements), 'card', ...SOME);
    expect(plain.code).toBe(1);
    expect(plain.out).toMatch(message);
    const data = await kit(workspace(measurements), 'card', ...SOME, '--json');
    expect([data.code, data.out]).toEqual([1, '']);
    expect(data.err).toMatch(message);
  });

  it('keeps what needs no browser when there is none', async () => {
    const folder = workspace(PLAIN);
    const { code, err } = await kit(folder, 'card', ...SOME, '--browser', join(folder, 'none'));
    expect(code).toBe(2);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
    expect(readdirSync(join(folder, 'dist/host/card-kit-4')).sort()).toEqual([
      'index.html',
      'kit.csv',
      'kit.json',
    ]);
  });
});

describe('the kit of a project with variants', () => {
  const SIZES = `${PLAIN}\n  variants: { small: { a.cut: 2 x 5 }, large: }`;
  type Json = {
    readonly spares: number;
    readonly stocks: readonly { readonly total: number; readonly layouts: readonly Layout[] }[];
  };
  type Layout = { readonly count: number; readonly placements: readonly { readonly piece: string }[] };
  const planned = async (measurements: string, ...argv: string[]): Promise<Json> => {
    const { code, out } = await kit(workspace(measurements), 'card', '--json', ...argv);
    expect(code).toBe(0);
    return JSON.parse(out) as Json;
  };
  const cut = ({ stocks }: Json): Readonly<Record<string, number>> => {
    const counts: Record<string, number> = {};
    for (const { count, placements } of stocks.flatMap(({ layouts }) => layouts))
      for (const { piece } of placements) counts[piece] = (counts[piece] ?? 0) + count;
    return counts;
  };

  // 8 1/2 × 11 in gives four pieces of 4 × 5 in, or eight of 2 × 5.
  it.each([
    ['small', '2 x 5', 2],
    ['large', '4 x 5', 3],
  ])('is for everybody that of %s written alone', async (variant, size, sheets) => {
    const ofVariant = await planned(SIZES, '--attendees', '12', '--variant', variant);
    const alone = await planned(PLAIN.replace('4 x 5', size), '--attendees', '12');
    const plans = [ofVariant, alone].map(({ stocks }) => stocks.map((stock) => ({ ...stock, seconds: 0 })));
    expect(plans[0]).toEqual(plans[1]);
    expect(ofVariant.stocks[0]?.total).toBe(sheets);
  });

  it.each([
    [['small=8', 'large=4'], { 'a (small)': 8, 'a (large)': 4 }, 2],
    [['SMALL=8', 'large'], { 'a (small)': 8, 'a (large)': 4 }, 2],
    [['all'], { 'a (small)': 12, 'a (large)': 12 }, 5],
  ])('is one plan for %j', async (variants, pieces, sheets) => {
    const json = await planned(SIZES, '--attendees', '12', '--variant', ...variants);
    expect(cut(json)).toEqual(pieces);
    expect(json.stocks[0]?.total).toBe(sheets);
  });

  it('has spares of each', async () => {
    const argv = ['--attendees', '3', '--spares', '1', '--variant', 'small=1', 'large'];
    const json = await planned(SIZES, ...argv);
    expect(cut(json)).toEqual({ 'a (small)': 2, 'a (large)': 3 });
    expect(json.spares).toBe(2);
  });

  it.each([
    [SIZES, [], /card has the variants small, large: say which, as in --variant small for everybody/u],
    [SIZES, ['smal'], /card has no variant named "smal"; its variants are: small, large/u],
    [SIZES, ['small=3'], /--attendees says 4, but the variants come to 3/u],
    [SIZES, ['small=3', 'large=2'], /--attendees says 4, but the variants come to 5/u],
    [SIZES, ['small', 'large'], /only one --variant can go without a number/u],
    [SIZES, ['small=few'], /--variant small takes a whole number after the =, not "few"/u],
    [PLAIN, ['small'], /card has no variants: leave --variant out/u],
  ])('is refused of %j for %j', async (measurements, variants, message) => {
    const named = variants.length > 0 ? ['--variant', ...variants] : [];
    const { code, err } = await kit(workspace(measurements), 'card', ...SOME, ...named);
    expect(code).toBe(2);
    expect(err).toMatch(message);
  });
});
