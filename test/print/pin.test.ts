import { describe, expect, it } from 'vitest';
import { pin } from '../../src/print/pdf.ts';

/** As much of a PDF as pinning looks at, in the browser's manner: objects, their table, the trailer. */
function file(objects: string, title = 'A', dates = DATES): Uint8Array {
  const head = '%PDF-1.4\n';
  const info = `1 0 obj\n<</Title (${title} \\(node00000077\\) /ModDate \\(D:1\\))\n${dates}>>\nendobj\n`;
  const others = `2 0 obj\n${objects}\nendobj\n`;
  const offsets = [head.length, head.length + info.length];
  const rows = offsets.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`).join('');
  const table = `xref\n0 3\n0000000000 65535 f \n${rows}trailer\n<</Size 3\n/Root 2 0 R\n/Info 1 0 R>>\n`;
  const start = head.length + info.length + others.length;
  return Buffer.from(`${head}${info}${others}${table}startxref\n${start}\n%%EOF\n`, 'latin1');
}

const DATES = "/CreationDate (D:20240102030405+00'00')\n/ModDate (D:20240102030405-06'00')";

const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');

describe('pinning', () => {
  it('puts the day in both dates and changes no length', () => {
    const before = file('');
    const after = pin(before, '2026-12-10');
    expect(after.length).toBe(before.length);
    expect(text(after)).toContain(
      "/CreationDate (D:20261210000000+00'00')\n/ModDate (D:20261210000000+00'00')",
    );
  });

  it('leaves what it is given as it was', () => {
    const before = file('');
    const copy = Uint8Array.from(before);
    pin(before, '2026-12-10');
    expect(Buffer.from(copy).equals(before)).toBe(true);
  });

  it('changes a date only where the information stands', () => {
    const elsewhere = "(/ModDate (D:20200101000000+00'00'))";
    expect(text(pin(file(elsewhere), '2026-12-10'))).toContain(elsewhere);
  });

  it('numbers names as they come and sorts their list, keeping each with its element', () => {
    const objects = [
      '/ID (node00000077)>> /ID (node00000012)>> /Headers [(node00000012)] /Alt (node00000012)',
      '<</Limits [(node00000012) (node00000077)]\n/Names [(node00000012) 9 0 R (node00000077) 101 0 R]>>',
    ];
    const after = text(pin(file(objects.join('\n')), '2026-12-10'));
    expect(after).toContain(
      '/ID (node00000001)>> /ID (node00000002)>> /Headers [(node00000002)] /Alt (node00000012)\n' +
        '<</Limits [(node00000001) (node00000002)]\n/Names [(node00000001) 101 0 R (node00000002) 9 0 R]>>',
    );
    expect(after).toContain('A \\(node00000077\\)');
  });

  it.each(['10 December 2026', '2026-1-1', '', '2026-12-10T00:00'])('refuses %j as a day', (day) => {
    expect(() => pin(file(''), day)).toThrow(RangeError);
  });

  it('refuses a file it does not know', () => {
    expect(() => pin(Buffer.from('%PDF-1.7'), '2026-12-10')).toThrow('without a table of its objects');
    expect(() => pin(file('', 'A', ''), '2026-12-10')).toThrow('0 dates');
  });

  it.each(['endobj', 'xref 0 1 trailer', 'startxref 3', '/Info 2 0 R', '1 0 obj', '/Count 900 /Type /Pages'])(
    'takes a title that says %j for no structure',
    (title) => {
      const after = text(pin(file('', title), '2026-12-10'));
      expect(after.match(/D:20261210/gu)).toHaveLength(2);
      expect(after).toContain(`(${title} `);
    },
  );
});
