import { describe, expect, it } from 'vitest';
import { tellFinding } from '../../src/proof/tell.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { blamed, cutOf, faultsOf, from, pieceOf, readSheet, sheetOf } from './reading.ts';

const STOCK = 'stock:\n  moss: { name: Moss cardstock, sheet: 8 1/2 x 11, price: 0.45 }\n';

describe('shared stock', () => {
  const sheet = sheetOf('pieces: { a: { stock: shared.moss, cut: 3 x 4 } }');

  it('is in the project under the name its pieces use, with its place in the shared file', () => {
    const project = readSheet(sheet, { 'shared/stock.yaml': STOCK });
    expect(faultsOf(project)).toEqual([]);
    expect([...project.stock.keys()]).toEqual(['shared.moss']);
    const moss = project.stock.get(pieceOf(project, 'a').stock?.value ?? '');
    expect(moss?.id.value).toBe('shared.moss');
    expect(moss?.sheets.map(({ size }) => [from(size.width), size.width.at.file.path])).toEqual([
      ['17/2 in from 8 1/2', 'shared/stock.yaml'],
    ]);
  });

  it('is there only when it is used', () => {
    const files = { 'shared/stock.yaml': `${STOCK}  cream: { sheet: 12 x 12 }\n` };
    expect([...readSheet(sheet, files).stock.keys()]).toEqual(['shared.moss']);
  });

  it('stands beside stock of the same name in the sheet, and can be changed in one', () => {
    const own =
      'stock: { moss: { use: shared.moss, price: 0.60 }, plain: { name: Own } }\npieces: { a: { stock: moss, cut: 3 x 4 }, b: { stock: shared.moss, cut: 1 x 1 } }';
    const project = readSheet(sheetOf(own), { 'shared/stock.yaml': STOCK });
    expect(faultsOf(project)).toEqual([]);
    expect(
      [...project.stock].map(([id, { name, sheets }]) => [id, name, sheets[0]?.price?.value.minor]),
    ).toEqual([
      ['moss', 'Moss cardstock', 60n],
      ['plain', 'Own', undefined],
      ['shared.moss', 'Moss cardstock', 45n],
    ]);
  });

  it('that is not there is reported with what is', () => {
    const project = readSheet(sheet.replace('moss', 'mos'), { 'shared/stock.yaml': STOCK });
    expect(project.findings).toMatchObject([
      { rule: 'unknown-reference', facts: { what: 'stock', name: 'shared.mos', among: ['shared.moss'] } },
    ]);
  });
});

describe('a shared piece', () => {
  const BOXES =
    'pieces:\n  small: { cut: 6 x 4, corners: 1/8 }\n  round: { use: shared.small, corners: 1/2 }\n';

  it('is used with further keys, which override', () => {
    const project = readSheet(
      sheetOf('pieces: { a: { use: shared.small, cut: 5 x 4 }, b: { use: shared.round } }'),
      {
        'shared/boxes.yaml': BOXES,
      },
    );
    expect(faultsOf(project)).toEqual([]);
    expect(cutOf(project, 'a')).toEqual(['5 in from 5', '4 in from 4']);
    expect(from(pieceOf(project, 'a').corners?.[0]?.radius)).toBe('1/8 in from 1/8');
    expect(cutOf(project, 'b')).toEqual(['6 in from 6', '4 in from 4']);
    expect(from(pieceOf(project, 'b').corners?.[0]?.radius)).toBe('1/2 in from 1/2');
  });

  it('is measured in the unit of its own file', () => {
    const project = readSheet(sheetOf('unit: in\npieces: { a: { use: shared.box }, b: { cut: 2 x 1 } }'), {
      'shared/boxes.yaml': 'unit: mm\npieces: { box: { cut: 254 x 127 } }\n',
    });
    expect([...cutOf(project, 'a'), ...cutOf(project, 'b')]).toEqual([
      '10 in from 254',
      '5 in from 127',
      '2 in from 2',
      '1 in from 1',
    ]);
  });

  it('with a form keeps its unit in each setting', () => {
    const project = readSheet(sheetOf('unit: in\npieces: { a: { use: shared.box, tab: 1/2 } }'), {
      'shared/boxes.yaml': 'unit: mm\npieces: { box: { form: tray, inside: 80 x 60 x 20 } }\n',
    });
    const { body } = pieceOf(project, 'a');
    const settings = body.kind === 'form' ? [...body.settings] : [];
    const lengths = settings.map(([key, setting]) => [
      key,
      ...(setting.kind === 'lengths' ? setting.lengths.map(({ value }) => value.mm) : []),
    ]);
    expect(lengths).toEqual([
      ['inside', 80, 60, 20],
      ['tab', 12.7],
    ]);
    expect(body).toMatchObject({ ruler: 'mm' });
  });

  it('may lack what every sheet adds', () => {
    const workspace = readWorkspaceFromTexts({
      'shared/boxes.yaml': 'pieces: { layer: { corners: 1/8 } }\n',
      'a/sheet.md': sheetOf('pieces: { a: { use: shared.layer, cut: 1 x 1 } }'),
      'b/sheet.md': sheetOf('pieces: { b: { use: shared.layer } }'),
    });
    expect(workspace.findings).toEqual([]);
    expect(workspace.projects.map(faultsOf)).toEqual([[], ['missing-value: b']]);
  });

  it('cannot use itself', () => {
    const project = readSheet(sheetOf('pieces: { a: { use: shared.x } }'), {
      'shared/boxes.yaml': 'pieces: { x: { use: shared.y }, y: { use: shared.x } }\n',
    });
    expect(faultsOf(project)).toEqual(['unexpected-value: shared.x']);
    expect(project.pieces.size).toBe(0);
  });
});

describe('a shared value that is right by itself', () => {
  const shared = {
    'shared/a.yaml': [
      'pieces:',
      '  base: { inside: 3 x 3 x 1 }',
      '  tray: { form: tray, inside: 3 x 3 x 1 }',
      '  card: { cut: 4 x 5 }',
      '  turned: { cut: 1 x 1, turn: 45 }',
      'supplies:',
      '  tool: { kind: tool }',
      '  glue: Glue',
      'stock:',
      '  moss: { name: Moss }',
      '',
    ].join('\n'),
  };
  const used = (piece: string): ReturnType<typeof readWorkspaceFromTexts> =>
    readWorkspaceFromTexts({ ...shared, 'c/sheet.md': sheetOf(`pieces: { x: ${piece} }`) });

  it.each<[string, string[]]>([
    ['{ use: shared.base, form: tray }', ['inside']],
    ['{ use: "shared.base ", form: tray, tab: 1/2 }', ['inside', 'tab']],
    ['{ use: shared.tray, outside: 3 x 3 x 1 }', ['outside']],
    ['{ use: shared.tray, form: envelope, card: 3 x 3 }', ['card']],
  ])('takes what %s adds', (piece, settings) => {
    const { findings, projects } = used(piece);
    expect([...findings, ...projects.flatMap((each) => each.findings)]).toEqual([]);
    const body = projects[0] && pieceOf(projects[0], 'x').body;
    expect(body?.kind === 'form' && [...body.settings.keys()].toSorted()).toEqual(settings);
  });

  it.each<[string, string, string, string | undefined]>([
    ['{ use: shared.tray, form: envelope }', 'unreadable-length', 'shared.tray', '3 x 3 x 1'],
    ['{ use: shared.base, form: envelope }', 'unreadable-length', 'shared.base', '3 x 3 x 1'],
    ['{ use: shared.card, form: tray, inside: 1 x 1 x 1 }', 'unknown-key', 'shared.card', 'cut'],
    ['{ use: shared.tray, cut: 3 x 4 }', 'unknown-key', 'cut', undefined],
    ['{ use: shared.base }', 'unknown-key', 'shared.base', 'inside'],
    ['{ use: shared.turned, at: { turn: 90 } }', 'repeated-key', 'shared.turned', '45'],
  ])('is wrong with %s, which is said there', (piece, rule, at, written) => {
    const { findings, projects } = used(piece);
    expect(findings).toEqual([]);
    const [found] = projects.flatMap((project) => project.findings);
    expect(found?.rule).toBe(rule);
    expect([found?.at.file.path, found && blamed(found.at).trim()]).toEqual(['c/sheet.md', at]);
    expect(found?.shared && [found.shared.file.path, blamed(found.shared)]).toEqual(
      written && ['shared/a.yaml', written],
    );
  });

  it('is said to be written where it is', () => {
    const [found] = used('{ use: shared.card, form: tray, inside: 1 x 1 x 1 }').projects[0]?.findings ?? [];
    expect(found && tellFinding(found)).toMatchObject({
      message: '"cut" is not a setting of x',
      remedy: 'delete it: its form works out what it is cut to',
      notes: [{ message: 'it is written here', at: found?.shared }],
    });
  });

  it.each<[string, string[], string[]]>([
    ['{ use: shared.tool, item: Knife }', [], ['Knife, tool']],
    ['{ use: shared.glue, kind: adhesive }', [], ['Glue, adhesive']],
    ['shared.glue', [], ['Glue, other']],
    ['"shared.glue "', [], ['Glue, other']],
    ['shared.tool', ['missing-value: shared.tool'], []],
    ['{ kind: tool }', ['missing-value: { kind: tool }'], []],
  ])('is a supply with %s', (supply, faults, items) => {
    const sheet = `---\ntitle: A\nmeasurements: {}\nsupplies: [${supply}]\n---\n`;
    const { findings, projects } = readWorkspaceFromTexts({ ...shared, 'c/sheet.md': sheet });
    expect(findings).toEqual([]);
    expect(projects.flatMap(faultsOf)).toEqual(faults);
    expect(
      projects.flatMap((project) => project.supplies.map((each) => `${each.item.value}, ${each.kind.value}`)),
    ).toEqual(items);
  });

  it('takes no value that has no keys', () => {
    const workspace = readWorkspaceFromTexts({
      'shared/a.yaml': 'pieces: { x: card }\n',
      'c/sheet.md': sheetOf('pieces: { x: { use: shared.x, cut: 1 x 1 } }'),
    });
    expect(faultsOf(workspace)).toEqual(['unexpected-value: card']);
    expect(workspace.projects.map(faultsOf)).toEqual([['unexpected-value: shared.x']]);
  });

  it('may use a thousand others', () => {
    const lines = Array.from(
      { length: 1000 },
      (_, index) => `  p${index + 1}: { use: shared.p${index}, count: 2 }\n`,
    );
    const workspace = readWorkspaceFromTexts({
      'shared/a.yaml': `pieces:\n  p0: { cut: 4 x 5 }\n${lines.join('')}`,
      'c/sheet.md': sheetOf('pieces: { x: { use: shared.p1000 } }'),
    });
    expect(workspace.projects.map(({ findings, pieces }) => [findings, pieces.size])).toEqual([[[], 1]]);
  });
});

describe('shared supplies', () => {
  const files = {
    'shared/supplies.yaml': 'supplies:\n  folder: { item: Bone folder, kind: tool, share: 2 }\n',
  };
  const supplied = (lines: string): ReturnType<typeof readSheet> =>
    readSheet(`---\ntitle: A\nmeasurements: {}\nsupplies:\n${lines}\n---\n`, files);

  it('are used by name alone, or with further keys', () => {
    const project = supplied('  - shared.folder\n  - { use: shared.folder, item: Spoon }\n  - Scissors');
    expect(faultsOf(project)).toEqual([]);
    expect(project.supplies.map(({ item, kind, share }) => [item.value, kind.value, share?.value])).toEqual([
      ['Bone folder', 'tool', 2],
      ['Spoon', 'tool', 2],
      ['Scissors', 'other', undefined],
    ]);
  });

  it.each(['shared.foldr', '{ use: shared.foldr }'])('%s is not there', (line) => {
    expect(faultsOf(supplied(`  - ${line}`))).toEqual(['unknown-reference: shared.foldr']);
  });
});

describe('a fault in a shared file', () => {
  const workspace = readWorkspaceFromTexts({
    'shared/boxes.yaml': 'pieces:\n  box: { cut: 3 x 1/0, colour: red }\n',
    'a/sheet.md': sheetOf('pieces: { a: { use: shared.box } }'),
    'b/sheet.md': sheetOf('pieces: { one: { use: shared.box }, two: { use: shared.box } }'),
    'c/sheet.md': sheetOf('pieces: { c: { cut: 1 x 1 } }'),
  });

  it('is reported where it stands', () => {
    expect(faultsOf(workspace)).toEqual(['unknown-key: colour', 'unreadable-length: 1/0']);
  });

  it('is the very same fault in every project that uses it, and in no other', () => {
    const [a, b, c] = workspace.projects;
    expect(new Set([...(a?.findings ?? []), ...(b?.findings ?? [])])).toEqual(new Set(workspace.findings));
    expect(c?.findings).toEqual([]);
    expect(a?.findings.every((fault) => workspace.findings.includes(fault))).toBe(true);
  });

  it.each<[string, string[]]>([
    ['stock:\n  moss: {}\n  moss: {}\n', ['repeated-key: moss']],
    ['stok: {}\n', ['unknown-key: stok']],
    ['stock: moss\n', ['unexpected-value: moss']],
    ['- stock\n', ['unexpected-value: - stock\n']],
    ['unit: ell\n', ['unexpected-value: ell']],
    ['stock: { moss: "A }\n', ['broken-yaml: "']],
    ['stock: { moss: {} }\n---\nstock: { fern: {} }\n', ['broken-yaml: ---']],
    ['', []],
    ['# nothing yet\n', []],
  ])('%j', (text, faults) => {
    expect(faultsOf(readWorkspaceFromTexts({ 'shared/x.yaml': text }))).toEqual(faults);
  });

  it('of one name in two files points at both', () => {
    const { findings } = readWorkspaceFromTexts({
      'shared/a.yaml': 'stock: { moss: {} }\n',
      'shared/b.yaml': 'supplies: { moss: { item: Moss } }\nstock: { moss: {} }\n',
    });
    expect(findings).toHaveLength(1);
    const [fault] = findings;
    expect(
      fault?.rule === 'repeated-key' && [fault.facts.first.file.path, fault.at.file.path, blamed(fault.at)],
    ).toEqual(['shared/a.yaml', 'shared/b.yaml', 'moss']);
  });
});

describe('a shared file that cannot be read', () => {
  it('is the one thing said, in every project that uses it, and of nothing else in them', () => {
    const sheet = sheetOf(
      'stock: { own: { sheet: 8 x 8 } }\npieces: { a: { use: shared.box }, b: { stock: shared.moss, cut: 1 x 1 }, c: { stock: ownn, cut: 1 x 1 } }',
    );
    const workspace = readWorkspaceFromTexts({
      'shared/boxes.yaml': 'pieces: { box: { cut: 4 x 4 }\n',
      'a/sheet.md': sheet,
      'b/sheet.md': sheet,
    });
    const [root] = workspace.findings;
    expect(root).toMatchObject({ rule: 'broken-yaml', at: { file: { path: 'shared/boxes.yaml' } } });
    for (const { findings } of workspace.projects) {
      expect(findings.filter(({ rule }) => rule === 'broken-yaml')).toContain(root);
      expect(findings.filter(({ rule }) => rule === 'unknown-reference').map(({ at }) => blamed(at))).toEqual(
        ['ownn'],
      );
    }
  });
});
