import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { kitCsv } from '../../src/kit/report/csv.ts';
import { lengthFigures, moneyFigure } from '../../src/kit/report/figures.ts';
import { kitJson } from '../../src/kit/report/json.ts';
import { Length } from '../../src/measure/length.ts';
import { loadWorkspace } from '../../src/shape/workspace.ts';
import { order, planned, projectOf } from './kits.ts';

const DOLLAR = { code: 'USD', decimals: 2 };
const demo = await loadWorkspace(fileURLToPath(new URL('../../projects', import.meta.url)));

/** Reads CSV by the grammar of RFC 4180, section 2, character by character; throws where a text does not follow it. */
function readCsv(text: string): string[][] {
  const records: string[][] = [];
  let at = 0;
  const field = (): string => {
    let value = '';
    if (text[at] !== '"') {
      while (at < text.length && !',\r\n'.includes(text[at] ?? '')) {
        if (text[at] === '"') throw new Error(`a quote within an unquoted field at ${at}`);
        value += text[at++];
      }
      return value;
    }
    for (at += 1; ; at += 1) {
      if (at >= text.length) throw new Error('a quoted field without an end');
      if (text[at] === '"' && text[at + 1] === '"') at += 1;
      else if (text[at] === '"') break;
      value += text[at];
    }
    at += 1;
    return value;
  };
  while (at < text.length) {
    const record = [field()];
    while (text[at] === ',') {
      at += 1;
      record.push(field());
    }
    if (at < text.length && text.slice(at, at + 2) !== '\r\n') throw new Error(`no CRLF at ${at}`);
    at += 2;
    records.push(record);
  }
  return records;
}

describe('the reader of CSV used here', () => {
  /** The examples of RFC 4180, section 2. */
  it('reads the examples of RFC 4180', () => {
    expect(readCsv('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(readCsv('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(readCsv('"aaa","bbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(readCsv('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(readCsv('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']]);
    expect(() => readCsv('aaa,b"b\r\n')).toThrow();
    expect(() => readCsv('aaa,bbb\nccc,ddd')).toThrow();
  });
});

describe('the CSV of a kit', () => {
  it('has one record a line, all with the same fields, and says what was planned', () => {
    const project = demo.projects.find(({ slug }) => slug === 'seed-packet-keeper');
    if (!project) throw new Error('the demo has changed');
    const kit = planned(project, order(24));
    const [header = [], ...records] = readCsv(kitCsv(kit, DOLLAR));
    expect(new Set(records.map(({ length }) => length))).toEqual(new Set([header.length]));
    const rows = records.map((record) =>
      Object.fromEntries(header.map((name, index) => [name, record[index] ?? ''])),
    );
    const sum = (list: string, item: string): number =>
      rows
        .filter((row) => row.list === list && row.item === item)
        .reduce((total, row) => total + Number(row.count), 0);
    expect(sum('piece', 'front')).toBe(24);
    const sizes = rows
      .filter(({ item }) => item === 'front')
      .map((row) => [row['width in'], row['height in']]);
    expect(new Set(sizes.map(String))).toEqual(new Set(['3 1/4,4 1/2']));
    expect(sum('sheet', 'Moss cardstock')).toBe(24);
    expect(
      rows.find(({ list, item }) => list === 'buy' && item === 'Strong double-sided tape'),
    ).toMatchObject({
      needed: '336 in',
      buy: '1',
      price: '3.80',
      cost: '3.80',
    });
    expect(rows.find(({ list, item }) => list === 'buy' && item === 'Seed packets')).toMatchObject({
      cost: '',
      unknown: 'price',
    });
    expect(
      rows
        .filter(({ list }) => list === 'cut')
        .every((row) => row['setting in'] !== '' && Number(row.count) > 0),
    ).toBe(true);
  });

  it('keeps commas, quotes and line breaks of a name', () => {
    const project = projectOf(
      '  stock: { card: { name: \'Card, "heavy"\', sheet: 4 x 4 } }\n  pieces: { a: { stock: card, cut: 4 x 4 } }',
      'supplies:\n  - { item: "Ink,\\n\\"blue\\"", kind: ink }\n',
    );
    const items = readCsv(kitCsv(planned(project, order(1)), DOLLAR)).map((record) => record[4]);
    expect(items).toContain('Card, "heavy"');
    expect(items).toContain('Ink,\n"blue"');
  });

  // The characters are those of OWASP's "CSV Injection" (owasp.org/www-community/attacks/CSV_Injection).
  it.each(['=1+1', '+1', '-1+1', '@SUM(A1)', '=HYPERLINK("x")', '＝1'])(
    'has no live formula where a name is %s',
    (name) => {
      const yaml = name.replaceAll('"', '\\"');
      const project = projectOf(
        `  stock: { cream: { name: "${yaml}", sheet: 8 1/2 x 11 } }\n  pieces: { a: { stock: cream, cut: 3 x 4, name: "${yaml}" } }`,
        `supplies: [{ item: "${yaml}", kind: adhesive }]\n`,
      );
      const fields = readCsv(kitCsv(planned(project, order(1)), DOLLAR)).flat();
      expect(fields.filter((field) => field === `'${name}`).length).toBeGreaterThan(2);
      expect(fields.filter((field) => /^[=+\-@＝]/u.test(field))).toEqual([]);
    },
  );
});

describe('the JSON of a kit', () => {
  it('has the shape that is promised, lengths in inches and millimeters', () => {
    const project = projectOf(
      '  stock: { card: { sheet: 8 1/2 x 11, price: 0.45 } }\n  pieces: { a: { stock: card, cut: 2 1/4 x 4, count: 2 } }',
    );
    const value = JSON.parse(kitJson(planned(project, order(2, { spares: 1 })), DOLLAR));
    expect(Object.keys(value)).toEqual(['project', 'attendees', 'spares', 'stocks', 'shopping', 'cost']);
    expect(value).toMatchObject({ project: 'trial', attendees: 2, spares: 1 });
    const [stock] = value.stocks;
    expect(Object.keys(stock)).toEqual(['stock', 'total', 'bound', 'proven', 'seconds', 'layouts']);
    expect(stock).toMatchObject({ stock: 'card', total: 1, bound: 1, proven: true });
    const [layout] = stock.layouts;
    expect(Object.keys(layout)).toEqual(['sheet', 'count', 'placements', 'cuts']);
    expect(layout).toMatchObject({
      sheet: { width: { in: '8 1/2', mm: 215.9 }, height: { in: '11', mm: 279.4 } },
      count: 1,
    });
    expect(layout.placements).toHaveLength(6);
    expect(Object.keys(layout.placements[0])).toEqual(['piece', 'x', 'y', 'width', 'height', 'turned']);
    expect(layout.placements[0]).toMatchObject({ piece: 'a', x: { in: '0', mm: 0 } });
    const sizes = layout.placements.map(({ width, turned }: { width: { in: string }; turned: boolean }) => [
      width.in,
      turned,
    ]);
    for (const [width, turned] of sizes) expect(width).toBe(turned ? '4' : '2 1/4');
    expect(value.cost).toMatchObject({ currency: 'USD', toBuy: { total: '0.45', without: [] }, price: null });
  });

  it('writes amounts of things to a millionth, as the CSV does', () => {
    const project = projectOf(
      '  stock: { card: { sheet: 8 1/2 x 11 } }\n  pieces: { a: { stock: card, cut: 2 x 4 } }',
      'supplies: [{ item: Glue stick, kind: adhesive, each: 1/3, pack: 2 }]\n',
    );
    const kit = planned(project, order(7));
    const [glue] = JSON.parse(kitJson(kit, DOLLAR)).shopping.filter(
      ({ item }: { item: string }) => item === 'Glue stick',
    );
    expect(glue).toMatchObject({ each: 0.333333, needed: 2.333333, toGet: 2.333333, pack: 2, buy: 2 });
    const [columns = [], ...rows] = readCsv(kitCsv(kit, DOLLAR));
    const row = rows.find((fields) => fields.includes('Glue stick'));
    expect(row?.[columns.indexOf('needed')]).toBe('2.333333');
  });

  it('writes figures exactly', () => {
    expect(lengthFigures(Length.of(9, 4, 'in'))).toEqual({ in: '2 1/4', mm: 57.15 });
    expect(lengthFigures(Length.of(1, 64, 'in'))).toMatchObject({ mm: 0.396875 });
    expect(moneyFigure({ minor: 5n }, 2)).toBe('0.05');
    expect(moneyFigure({ minor: 1234n }, 0)).toBe('1234');
    expect(moneyFigure({ minor: -1234n }, 3)).toBe('-1.234');
  });
});
