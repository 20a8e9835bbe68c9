import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { editionsOf } from '../../src/edition/editions.ts';
import { draftText } from '../../src/make/draft.ts';
import { ledgerText } from '../../src/project/ledger/ledger-format.ts';
import { readLedger } from '../../src/project/ledger/read-ledger.ts';
import { changesBetween } from '../../src/publish/changes.ts';
import { stateOf } from '../../src/publish/state.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { forms } from '../../src/shape/forms/index.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { emptyFolder, sheetwright } from '../cli/terminal.ts';

/** A project and its ledger as version 0.1.0 wrote it, in words. */
const IN_WORDS = fileURLToPath(new URL('in-words', import.meta.url));

function published(): { folder: string; sheet: string; ledger: string } {
  const folder = emptyFolder();
  cpSync(IN_WORDS, folder, { recursive: true });
  return { folder, sheet: join(folder, 'keeper/sheet.md'), ledger: join(folder, 'keeper/revisions.yaml') };
}

const publish = (folder: string): ReturnType<typeof sheetwright> =>
  sheetwright(folder, 'publish', '.', '--no-pdf');

const OLD_SENTENCES = [
  'front was 1¾ × 5¾ in, is 1¾ × 5⅝ in',
  'the place of front was on box front, ⅛ in from the left and ⅛ in from the top, is on box front, ⅛ in from the left and 3⁄16 in from the top',
];

describe('a ledger in words', () => {
  it('records nothing while nothing has changed, and is left as it is', async () => {
    const { folder, ledger } = published();
    const before = readFileSync(ledger, 'utf8');
    const { code, out } = await publish(folder);
    expect(code).toBe(0);
    expect(out).toContain('nothing has changed since the last revision, so none was recorded');
    expect(readFileSync(ledger, 'utf8')).toBe(before);
  });

  it('is shown as it was', async () => {
    const { folder } = published();
    await publish(folder);
    const page = readFileSync(join(folder, 'dist/site/keeper/index.html'), 'utf8');
    for (const sentence of OLD_SENTENCES) expect(page).toContain(sentence);
    expect(page).toContain('cut these again: front.');
    expect(readFileSync(join(folder, 'dist/site/feed.xml'), 'utf8')).toContain(OLD_SENTENCES[0]);
  });

  it('goes on as data, its sentences kept', async () => {
    const { folder, sheet, ledger } = published();
    const text = readFileSync(sheet, 'utf8');
    writeFileSync(
      sheet,
      text.replace('inside: 2 x 2 x 1', 'inside: 2 x 2 x 1 1/4').replace('1/8 }', '1/4 }'),
    );
    const { out } = await publish(folder);
    expect(out).toContain(
      [
        'keeper, revision 3:',
        '  tin was 4 × 4 in, is 4½ × 4½ in',
        '  the scores from the left of tin were 1 in, 3 in, are 1¼ in, 3¼ in',
        '  the scores from the bottom of tin were 1 in, 3 in, are 1¼ in, 3¼ in',
        '  the corners of front were ⅛ in, are ¼ in',
        '  to cut again: tin, front',
      ].join('\n'),
    );
    const read = readLedger({ path: '', text: readFileSync(ledger, 'utf8') }, () => expect.unreachable());
    const [, second, third] = read.revisions;
    expect(second).toMatchObject({ changes: OLD_SENTENCES, recut: ['front'] });
    expect(third?.changes).toHaveLength(4);
    expect(third?.recut).toBeUndefined();
  });
});

describe('the state of each form', () => {
  it.each(forms.map((form) => [form.name, form] as const))('%s: stands in a ledger whole', (_, form) => {
    const [project] = readWorkspaceFromTexts({ 'trial/sheet.md': draftText('trial', form) }).projects;
    if (!project) throw new Error('no project');
    const state = stateOf(editionsOf({ project, shapes: buildShapes(project) }));
    const text = ledgerText({ revisions: [], state });
    const again = readLedger({ path: '', text }, () => expect.unreachable()).state;
    expect(state.pieces.map(({ what }) => what)).toContain('cuts');
    expect(again && changesBetween(state, again)).toEqual([]);
    // Read and written once more, not a character is different: no length has lost anything.
    expect(again && ledgerText({ revisions: [], state: again })).toBe(text);
  });
});
