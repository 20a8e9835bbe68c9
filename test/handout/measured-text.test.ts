import { describe, expect, it } from 'vitest';
import { measuredHtml } from '../../src/handout/measured-text.ts';
import type { Target } from '../../src/handout/setting.ts';
import { ownNet } from '../../src/shape/sheets.ts';
import { parseMarkup, textOf } from './markup.ts';
import { sampleOf, settingFor, sheetHtml } from './sample.ts';

const CARD = sampleOf(`
unit: in
pieces:
  card:  { cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }], panels: { front: B1 } }
  layer: { cut: 4 x 5 1/4, on: card.front, corners: 1/4 }
`);
const METRIC = sampleOf(`
unit: mm
pieces:
  base:  { cut: 105 x 148 }
  layer: { cut: 97 x 140, on: base }
`);

function read(text: string, from = CARD, target: Target = 'letter'): string {
  return textOf(parseMarkup(measuredHtml(text, settingFor(from, target)).toString()));
}

describe('a measurement in running text', () => {
  it('gets the number of the edition where the project measures it', () => {
    const { metric } = CARD.editions;
    const layer = ownNet(metric.shapes.nets, 'layer')?.size;
    const size = `${layer?.width.mm} × ${layer?.height.mm}`;
    expect(read('Cut it at 4 × 5 1/4 in.')).toBe(`Cut it at 4 × 5 1/4 in (${size} mm).`);
  });

  it('is converted plainly where the project does not measure it', () => {
    expect(read('a strip 10 in long')).toBe('a strip 10 in (254 mm) long');
    expect(read('a thread 1/16 in thick')).toBe('a thread 1/16 in (2 mm) thick');
  });

  it('is printed in the leading edition first, whichever it was written in', () => {
    expect(read('10 in', CARD, 'a4')).toBe('254 mm (10 in)');
    expect(read('254 mm', CARD)).toBe('10 in (254 mm)');
  });

  it('gets inches in a project written in metric', () => {
    const inch = ownNet(METRIC.editions.inch.shapes.nets, 'layer')?.size;
    expect(read('97 mm', METRIC, 'a4')).toContain('97 mm (');
    expect(String(inch?.width)).toMatch(/in$/u);
    expect(read('97 mm', METRIC, 'a4')).toBe('97 mm (3 3/4 in)');
  });

  it('is left alone where a person paired it by hand', () => {
    for (const text of ['1/8 in (3 mm)', '3 mm / 1/8 in', '1/8 in or 3 mm'])
      expect(read(`Leave ${text} free.`)).toBe(`Leave ${text} free.`);
  });

  it.each([
    ['1/8 in (3 mm)', '1/8 in', '3 mm'],
    ['3 mm / 1/8 in', '1/8 in', '3 mm'],
    ['1/8 in or 3 mm', '1/8 in', '3 mm'],
    ['10 in, then 300 mm', '10 in, then 11 13/16 in', '254 mm, then 300 mm'],
  ])('is said in the one edition that is printed: %s', (text, inch, metric) => {
    const { editions, ...rest } = CARD;
    const alone = (printed: 'inch' | 'metric'): string =>
      read(`Leave ${text} free.`, { ...rest, editions: { ...editions, printed } });
    expect([alone('inch'), alone('metric')]).toEqual([`Leave ${inch} free.`, `Leave ${metric} free.`]);
  });

  it('is marked as rounded only where the project is made by it', () => {
    const odd = sampleOf('unit: in\npieces:\n  base: { cut: 3 1/3 x 4 }');
    expect(read('3 1/3 in', odd)).toMatch(/^≈3 5\/16 in \(\d+ mm\)$/u);
    expect(read('3 in', odd)).toBe('3 in (76 mm)');
    expect(read('250 mm', odd)).toBe('9 13/16 in (250 mm)');
  });

  it('comes back in centimeters to whoever writes centimeters', () => {
    expect(read('90 cm of tape', METRIC, 'a4')).toBe('90 cm (35 7/16 in) of tape');
    expect(read('6.45 cm', METRIC, 'a4')).toBe('6.45 cm (2 9/16 in)');
    const whole = sampleOf('unit: cm\npieces:\n  base: { cut: 10,5 x 14,8 }');
    expect(read('10.5 cm, then 25 mm', whole, 'a4')).toBe('10.5 cm (4 1/8 in), then 25 mm (1 in)');
    const text = textOf(parseMarkup(sheetHtml(whole, 'a4')));
    expect(text).toContain('10.5 × 14.8 cm');
    expect(text).not.toMatch(/105|148 mm|[Mm]illimeter/u);
  });

  it('is paired with no stranger', () => {
    expect(read('10 in, then 254 mm')).toBe('10 in (254 mm), then 10 in (254 mm)');
  });

  it('leaves what is no measurement', () => {
    expect(read('Do it 2 or 3 times at 18:30 in 4 layers.')).toBe('Do it 2 or 3 times at 18:30 in 4 layers.');
  });

  it('stays text, whatever stands round it', () => {
    expect(measuredHtml('<b>10 in</b> & "x"', settingFor(CARD)).toString()).not.toMatch(/<b>|& /u);
  });
});
