import fc from 'fast-check';
import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { coordinate, element, escapeText, pathData } from '../../src/drawing/svg.ts';
import { elementsOf } from './drawn.ts';

describe('the SVG writer', () => {
  it('rounds a coordinate to a thousandth of a millimeter', () => {
    expect(coordinate(25.4)).toBe('25.4');
    expect(coordinate(1 / 3)).toBe('0.333');
    expect(coordinate(-0.0001)).toBe('0');
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('refuses %s', (value) => {
    expect(() => coordinate(value)).toThrow(RangeError);
    expect(() => element('path', { x: value })).toThrow(RangeError);
    expect(() => pathData([{ x: 0, y: value }], false)).toThrow(RangeError);
  });

  it('leaves out an attribute that is undefined', () => {
    expect(element('g', { class: undefined, x: 1 })).toBe('<g x="1"/>');
  });

  it('writes markup in a text as text', () => {
    const svg = element('text', { class: '"><script>' }, escapeText('<script>alert(1)</script> & "so"'));
    expect(XMLValidator.validate(svg)).toBe(true);
    expect(elementsOf(svg).map(({ name }) => name)).toEqual(['text']);
  });

  it('is well-formed whatever stands in it', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const svg = element('text', { 'aria-label': text }, escapeText(text));
        expect(XMLValidator.validate(svg)).toBe(true);
        // The characters XML 1.0 allows: https://www.w3.org/TR/xml/#charsets
        const allowed = /^[\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]*$/u;
        expect(svg).toMatch(allowed);
      }),
      { seed: 4, numRuns: 500 },
    );
  });

  it('writes a path in absolute steps', () => {
    const points = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 5.00049 },
    ];
    expect(pathData(points, true)).toBe('M0,0L10,0L10,5Z');
    expect(pathData(points, false)).toBe('M0,0L10,0L10,5');
  });
});
