import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { emptyFolder, sheetwright } from './terminal.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const readme = readFileSync(join(root, 'README.md'), 'utf8');

/** What stands between the fences of a block. */
function block(opening: string): string {
  const [, text = ''] = new RegExp(`${opening}\\n([\\s\\S]*?)\`\`\``, 'u').exec(readme) ?? [];
  return text;
}

function workspaceWith(sheet: string): string {
  const folder = emptyFolder();
  mkdirSync(join(folder, 'projects/seed-packet-keeper'), { recursive: true });
  writeFileSync(join(folder, 'projects/seed-packet-keeper/sheet.md'), sheet);
  return folder;
}

describe('the README', () => {
  it('shows a sheet that proofs clean', async () => {
    const sheet = block('```markdown');
    expect(sheet).toContain('Seed packet keeper');
    const { code, out } = await sheetwright(workspaceWith(sheet), 'proof', '--strict');
    expect(out).not.toMatch(/ (?:error|warning) /u);
    expect(code).toBe(0);
  });

  it('shows what is really said of a wrong number', async () => {
    const wrong = block('```markdown').replace('cut: 3 1/4 x 4 1/2', 'cut: 3 3/4 x 4 1/2');
    const { out } = await sheetwright(workspaceWith(wrong), 'proof');
    expect(out).toContain(block('before anybody cuts:\n\n```').trimEnd());
  });

  it('says what to type in an empty folder, and all of it works', async () => {
    const [, typed = ''] = /from an empty folder\n[\s\S]*?```sh\n([\s\S]*?)```/u.exec(readme) ?? [];
    const lines = typed.trim().split('\n');
    expect(lines).toHaveLength(3);
    const folder = emptyFolder();
    // The preview serves until it is stopped: its own tests start it.
    for (const line of lines.filter((each) => !each.endsWith('preview'))) {
      const [, ...words] = (line.match(/"[^"]*"|\S+/gu) ?? []).map((word) => word.replaceAll('"', ''));
      expect([line, (await sheetwright(folder, ...words)).code]).toEqual([line, 0]);
    }
  });

  it('leads to files that are there', () => {
    const links = [...readme.matchAll(/\]\((?!https?:)([^)#]+)/gu)].map(([, path = '']) => path);
    expect(links.length).toBeGreaterThan(8);
    expect(links.filter((path) => !existsSync(join(root, path)))).toEqual([]);
  });
});
