import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parcelOf } from '../../src/kit/parcel.ts';
import { readRoster } from '../../src/kit/roster.ts';
import { demoCopy, sheetwright } from '../cli/terminal.ts';
import { readPdf } from '../print/read-pdf.ts';
import { order, planned, projectOf } from './kits.ts';

describe('a roster', () => {
  it('is read as RFC 4180 has it: quotes, commas, line breaks, doubled quotes', () => {
    const text =
      'note,name,how many,by,address,unit\r\n' +
      ',"Reed, Juniper",2,post,"Quay House\r\n3 Mole Lane\r\nHarbour Town",metric\r\n' +
      '"left-handed ""lefty""",Fern Hill,,room,,\r\n' +
      '\r\n';
    expect(readRoster(text)).toEqual({
      people: [
        {
          name: 'Reed, Juniper',
          kits: 2,
          by: 'post',
          unit: 'metric',
          address: ['Quay House', '3 Mole Lane', 'Harbour Town'],
          note: '',
        },
        { name: 'Fern Hill', kits: 1, by: 'room', unit: undefined, address: [], note: 'left-handed "lefty"' },
      ],
    });
    // Without the last line break, with other line ends, with a byte order mark.
    expect(readRoster('\uFEFFName\nFern Hill')).toMatchObject({ people: [{ name: 'Fern Hill' }] });
  });

  it.each([
    ['who\nFern', 1, /names the columns/u],
    ['name;by\nFern;post', 1, /with commas/u],
    ['name,by\nFern,post', 2, /without an address/u],
    ['name,how many\nFern,0\n', 2, /whole number from 1/u],
    ['name,how many\n"two\nlines",1\nFern,x', 4, /whole number/u],
    ['name,unit\nFern,cubits', 2, /inch or metric/u],
    ['name,by\nFern', 2, /1 fields, but 2 columns/u],
    ['name\n"Fern', 2, /never closed/u],
    ['name\n', 1, /nobody/u],
  ])('says at which line %j is wrong, and repeats nothing of it', (text, line, problem) => {
    const reading = readRoster(text);
    expect('faults' in reading && reading.faults[0]).toEqual({
      line,
      problem: expect.stringMatching(problem),
    });
    expect(JSON.stringify(reading)).not.toContain('Fern');
  });
});

describe('a parcel', () => {
  it('is as heavy and as thick as its papers, by hand', () => {
    const project = projectOf(
      '  stock: { card: { sheet: 8 1/2 x 11, weight: 250 gsm, caliper: 0.3 mm } }\n  pieces: { a: { stock: card, cut: 100 mm x 100 mm, count: 3 } }',
    );
    const { grams, thickness } = parcelOf(planned(project, order(7)), 2);
    // 2 kits of 3 pieces of 0.01 m² at 250 g/m²; 6 × 0.3 mm.
    expect(grams).toBeCloseTo(15, 9);
    expect(thickness.mm).toBeCloseTo(1.8, 9);
  });
});

const LONG_ADDRESS = [
  'Quill House 0',
  "The Old Sailmakers' Loft, above the chandlery",
  '14 Upper Lighthouse Approach Road',
  'HARBOUR TOWN',
  'HT4 9QQ',
  'Far Island',
].join('\n');

describe('sheetwright kit --roster', () => {
  it('packs for 200 people soon, names them in dist/host/ and nowhere else', async () => {
    const folder = demoCopy();
    const people = Array.from({ length: 200 }, (_, index) =>
      index % 2 === 0
        ? `Quill ${index},1,post,inch,"Quill House ${index}\n${index} Pier Road",`
        : `Quill ${index},1,room,metric,,Sits at the window`,
    );
    people[0] = `Quill 0,1,post,inch,"${LONG_ADDRESS}",`;
    writeFileSync(join(folder, 'people.csv'), ['name,how many,by,unit,address,note', ...people].join('\r\n'));
    const start = process.cpuUsage();
    const { code, out, err } = await sheetwright(
      folder,
      ...['kit', 'wheat-field-card', 'projects', '--roster', 'people.csv', '--out', 'dist'],
    );
    const { user, system } = process.cpuUsage(start);
    expect([code, err.replace(/^planning .*$/gmu, '').trim()]).toEqual([0, '']);
    expect((user + system) / 1e6).toBeLessThan(10);
    expect(out).not.toContain('Quill');
    expect(existsSync(join(folder, 'dist', 'site'))).toBe(false);
    const kit = join(folder, 'dist', 'host', 'wheat-field-card-kit-200');
    const named = readdirSync(kit).filter((file) => /labels|packing|addresses/u.test(file));
    expect(named).toHaveLength(3);
    for (const file of named) {
      const { pages } = await readPdf(readFileSync(join(kit, file)));
      const text = pages.map((page) => page.text).join('\n');
      expect(text).toContain('Quill 198');
      expect(text.includes('Quill 199')).toBe(!file.includes('addresses'));
    }
    for (const file of ['index.html', 'kit.json', 'kit.csv'])
      expect(readFileSync(join(kit, file), 'utf8')).not.toContain('Quill');
    // 30 labels to a sheet of Letter.
    const { pages: sheets } = await readPdf(readFileSync(join(kit, 'wheat-field-card-addresses.pdf')));
    expect(sheets).toHaveLength(4);
    const last = sheets[0]?.words.find(({ text }) => text.includes('Island'));
    // The first label ends 1 1/2 in below the edge of the sheet.
    expect(last?.y ?? Number.POSITIVE_INFINITY).toBeLessThan(38.1 - 2);
  }, 60_000);

  it('takes no number that the roster contradicts, and needs one of them', async () => {
    const folder = demoCopy();
    writeFileSync(join(folder, 'people.csv'), 'name,how many\nFern,2\n');
    const kit = (...argv: string[]) => sheetwright(folder, 'kit', 'wheat-field-card', 'projects', ...argv);
    expect(await kit('--roster', 'people.csv', '--attendees', '3')).toMatchObject({
      code: 2,
      err: expect.stringContaining('the roster comes to 2'),
    });
    expect(await kit('--roster', 'nobody.csv')).toMatchObject({
      code: 2,
      err: expect.stringContaining('cannot be read'),
    });
    expect(await kit()).toMatchObject({ code: 2, err: expect.stringContaining('--roster') });
    writeFileSync(join(folder, 'many.csv'), `name,how many\n${'Fern,100\n'.repeat(11)}`);
    expect(await kit('--roster', 'many.csv')).toMatchObject({
      code: 2,
      err: expect.stringContaining(
        'the roster comes to 1100 kits, more than the 1000 that are planned at once',
      ),
    });
  });
});
