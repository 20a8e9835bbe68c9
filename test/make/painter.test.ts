import { fork } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPainter, type Painter } from '../../src/make/painter.ts';
import { builtPackage } from '../built.ts';
import { emptyFolder } from '../cli/terminal.ts';

const CONTENT = {
  title: 'Seed packet keeper',
  siteTitle: 'Harbour Street Library',
  facts: '40 minutes',
  accent: '#335577',
  tint: '#eeeeff',
  picture: undefined,
  font: undefined,
};

let script: string;
let there: Painter;
const here = openPainter(undefined);
beforeAll(async () => {
  script = join(await builtPackage(), 'dist', 'lib', 'painter.js');
  there = openPainter(script);
});
afterAll(() => there.close());

const photo = (): Promise<Buffer> =>
  sharp({ create: { width: 90, height: 60, channels: 3, background: '#884422' } })
    .jpeg()
    .toBuffer();

/** The first file of a process that is killed by what it is asked, so many times; after that it answers. */
function dying(times: number): string {
  const path = join(emptyFolder(), 'painter.mjs');
  const script = `import { appendFileSync, readFileSync } from 'node:fs';
const starts = ${JSON.stringify(`${path}.starts`)};
appendFileSync(starts, 'x');
process.once('disconnect', () => process.exit());
process.on('message', ({ number }) => {
  if (readFileSync(starts).length <= ${times}) process.kill(process.pid, 'SIGKILL');
  else process.send({ number, kind: 'done', painted: 'icon' });
});
`;
  writeFileSync(path, script);
  return path;
}

describe('a painter in a process of its own', () => {
  it('gives the bytes that one in this process gives', async () => {
    const source = await photo();
    const paint = async (painter: Painter): Promise<unknown> => {
      const [photos, picture, icon] = await Promise.all([
        painter.encodePhoto(source, 480),
        painter.paintLinkPicture(CONTENT, 'wide'),
        painter.paintIcon(),
      ]);
      const encoded = Object.entries(photos).map(([ending, { bytes, width, height }]) => [
        ending,
        Buffer.from(bytes).toString('base64'),
        width,
        height,
      ]);
      return [encoded, ...[picture, icon].map((bytes) => Buffer.from(bytes).toString('base64'))];
    };
    expect(await paint(there)).toEqual(await paint(here));
  });

  it('refuses what the other refuses, in its words, and goes on', async () => {
    const [said, expected] = await Promise.all(
      [there, here].map((painter) => painter.encodePhoto(Buffer.from('no photo'), 480).catch(String)),
    );
    expect(said).toBe(expected);
    expect(said).toContain('unsupported image format');
    expect(await there.paintIcon()).not.toHaveLength(0);
  });

  it('refuses what waits when its process dies, and starts another for the next', async () => {
    const font = { path: 'x', file: join(script, 'none'), digest: 'none', letters: [[0, 1] as const] };
    await expect(there.paintLinkPicture({ ...CONTENT, font }, 'wide')).rejects.toThrow();
    const waiting = there.encodePhoto(await photo(), 480).catch(String);
    await there.close();
    expect(await waiting).toBe('Error: what paints pictures broke off');
    expect(await there.paintIcon()).not.toHaveLength(0);
  });

  it('asks another process once more for what one that died was asked', async () => {
    const painter = openPainter(dying(1));
    expect(await Promise.all([painter.paintIcon(), painter.paintIcon()])).toEqual(['icon', 'icon']);
    await painter.close();
  });

  it('asks for what two processes died of no third time', async () => {
    const path = dying(2);
    await expect(openPainter(path).paintIcon()).rejects.toThrow('what paints pictures broke off');
    expect(readFileSync(`${path}.starts`, 'utf8')).toBe('xx');
  });

  it('is not ended by Ctrl-C, which a terminal sends to all processes: whoever it paints for decides', async () => {
    const child = fork(script, { serialization: 'advanced' });
    child.send({ number: 1, name: 'paintIcon', given: [] });
    await once(child, 'message');
    const gone = once(child, 'exit');
    child.kill('SIGINT');
    child.send({ number: 2, name: 'paintIcon', given: [] });
    const [report] = await Promise.race([once(child, 'message'), gone]);
    expect(report).toMatchObject({ number: 2, kind: 'done' });
    child.disconnect();
    expect(await gone).toEqual([0, null]);
  });
});
