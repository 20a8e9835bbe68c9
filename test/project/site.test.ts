import { describe, expect, it } from 'vitest';
import { readSite } from '../../src/project/reading/read-site.ts';
import { sourceFile } from '../../src/project/source.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { faultsOf, from, sheetOf } from './reading.ts';

const read = (text: string): ReturnType<typeof readSite> => readSite(sourceFile('site.yaml', text));

describe('the settings', () => {
  it('have a default each', () => {
    for (const site of [readSite(), read(''), read('# nothing yet\n'), read('bench:\n')]) {
      expect(site).toMatchObject({
        title: 'Paper projects',
        language: 'en',
        paper: ['letter', 'a4'],
        currency: 'USD',
        findings: [],
      });
      expect(
        [site.bench.board, site.bench.trimmer, site.bench.printerMargin].map(({ value }) => `${value}`),
      ).toEqual(['1/8 in', '12 in', '1/4 in']);
      expect(site.url).toBeUndefined();
      expect(site.sessions).toBeUndefined();
      expect(site.bench.metricBoard).toBeUndefined();
    }
  });

  it('are read as they are written', () => {
    const site = read(`title: Harbour Street Library paper bench
url: https://example.org/bench/
language: de-at
paper: [a4]
currency: eur
bench: { board: 1/16 in, metric board: 5 mm, trimmer: 31 cm, printer margin: 5 mm }
sessions: { every: 2 weeks, on: thursday, at: 18:30, zone: America/Chicago, from: 2026-10-01, except: [2026-12-24] }
`);
    expect(faultsOf(site)).toEqual([]);
    expect(site).toMatchObject({ language: 'de-AT', paper: ['a4'], currency: 'EUR' });
    expect(from(site.url)).toBe('https://example.org/bench/ from https://example.org/bench/');
    expect(
      [site.bench.board, site.bench.metricBoard, site.bench.trimmer, site.bench.printerMargin].map(from),
    ).toEqual([
      '1/16 in from 1/16 in',
      '25/127 in from 5 mm',
      '1550/127 in from 31 cm',
      '25/127 in from 5 mm',
    ]);
    const { sessions } = site;
    expect([sessions?.every, sessions?.on, sessions?.at, sessions?.zone, sessions?.from].map(from)).toEqual([
      '2 weeks from 2 weeks',
      'thursday from thursday',
      '18:30 from 18:30',
      'America/Chicago from America/Chicago',
      '2026-10-01 from 2026-10-01',
    ]);
    expect(sessions?.except.map(from)).toEqual(['2026-12-24 from 2026-12-24']);
  });

  it.each<[string, string[]]>([
    ['titel: A', ['unknown-key: titel']],
    ['url: ftp://example.org', ['unsafe-content: ftp://example.org']],
    ['url: javascript:alert(1)', ['unsafe-content: javascript:alert(1)']],
    ['language: 7', ['unexpected-value: 7']],
    ['paper: legal', ['unexpected-value: legal']],
    ['currency: QQQ', ['unexpected-value: QQQ']],
    ['bench: big', ['unexpected-value: big']],
    ['bench: { board: 0 }', ['unreadable-length: 0']],
    ['bench: { bord: 1/8 }', ['unknown-key: bord']],
    ['sessions: { on: thursday }', ['missing-value: { on: thursday }']],
    ['sessions: { every: week, from: 2026-02-30 }', ['no-such-date: 2026-02-30']],
    ['sessions: { every: week, except: [2026-12-24, 2026-13-24] }', ['no-such-date: 2026-13-24']],
    ['sessions: { every: week, at: 25:00 }', ['unexpected-value: 25:00']],
    ['sessions: { every: week, at: 18h30 }', []],
    ['sessions: { every: week, zone: Harbour/Street }', ['unexpected-value: Harbour/Street']],
    ['sessions: { every: fortnight, on: thursday }', ['unexpected-value: fortnight']],
    ['sessions: { every: 0 weeks, on: thursday }', ['unexpected-value: 0 weeks']],
    ['sessions: { every: second thursday }', ['unexpected-value: second thursday']],
    ['sessions: { every: other thursday, on: friday }', ['unexpected-value: friday']],
    ['sessions: { every: other thursday, on: thursday }', []],
    ['sessions: { every: Other Thursday }', []],
    ['sessions: { every: week, on: thorsday }', ['unexpected-value: thorsday']],
    ['sessions: { every: month, on: thursday }', ['unexpected-value: thursday']],
    ['sessions: { every: month, on: fifth thursday }', ['unexpected-value: fifth thursday']],
    ['sessions: { every: 2 weeks, on: first thursday }', ['unexpected-value: first thursday']],
    ['sessions: { every: month, on: second Thursday }', []],
    ['sessions: { every: week, on: Tuesdays and Thursdays }', []],
    ['sessions: thursdays', ['unexpected-value: thursdays']],
    ['- a', ['unexpected-value: - a']],
    ['title: "A', ['broken-yaml: "']],
    ['title: A\ntitle: B', ['repeated-key: title']],
    ['title: A\n---\nunits: metric\n', ['broken-yaml: ---']],
    ['title: A\n...\nunits: metric\n', ['broken-yaml: units: metric']],
    ['---\ntitle: A\n---\n', []],
    ['# The bench\n---\ntitle: A\n\n# the end\n...\n', []],
  ])('%s', (text, faults) => {
    expect(faultsOf(read(text))).toEqual(faults);
  });

  it('say how many decimals a price has', () => {
    const priced = (currency: string, price: string): unknown => {
      const sheet = sheetOf(`stock: { m: { sheet: 1 x 1, price: ${price} } }`);
      const { projects } = readWorkspaceFromTexts({
        'site.yaml': `currency: ${currency}\n`,
        'a/sheet.md': sheet,
      });
      return projects[0]?.stock.get('m')?.sheets[0]?.price?.value.minor;
    };
    expect(priced('USD', '0.45')).toBe(45n);
    expect(priced('USD', '12')).toBe(1200n);
    expect(priced('USD', '$1.5')).toBe(150n);
    expect(priced('JPY', '45')).toBe(45n);
    expect(priced('JPY', '0.45')).toBeUndefined();
    expect(priced('KWD', '0.455')).toBe(455n);
  });
});

describe('the editions that are made', () => {
  const units = (site: string, head: string): unknown => {
    const sheet = `---\ntitle: A\n${head}measurements: { unit: in }\n---\n`;
    const workspace = readWorkspaceFromTexts({ 'site.yaml': site, 'a/sheet.md': sheet });
    expect([faultsOf(workspace.site), workspace.projects.map(faultsOf)]).toEqual([[], [[]]]);
    return workspace.projects[0]?.units;
  };

  it.each<[string, string, string]>([
    ['', '', 'both'],
    ['units: metric', '', 'metric'],
    ['', 'units: inch\n', 'inch'],
    ['units: Inch', 'units: both\n', 'both'],
    ['units: inch', 'units: metric\n', 'metric'],
  ])('site.yaml: "%s", the sheet: %j: %s', (site, head, expected) => {
    expect(units(site, head)).toBe(expected);
  });

  it('have no other name', () => {
    expect(faultsOf(read('units: imperial'))).toEqual(['unexpected-value: imperial']);
  });
});
