import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choicesOf } from '../../src/site/choices.ts';
import { listingOf, papersLines } from '../../src/site/listed.ts';
import { absolute, lastingName } from '../../src/site/place.ts';
import { relatedOf } from '../../src/site/related.ts';
import { whenText } from '../../src/site/when.ts';
import { voiceOf } from '../../src/words/voice.ts';
import { labels } from '../handout/sample.ts';
import { listed, siteOf } from './bench.ts';

const voice = voiceOf(labels);

describe('projects in the order a visitor looks for them', () => {
  const projects = [
    listed('c', { session: '2026-12-10' }),
    listed('a', { session: '2026-10-15' }),
    listed('z'),
    listed('b', { session: '2026-11-12' }),
    listed('d', { session: '2026-12-10' }),
    listed('e', { session: '2027-01-07' }),
    listed('y'),
  ];
  const order = (today: string): string[] => {
    const { next, toCome, earlier, undated } = listingOf(projects, today);
    return [next ? [next] : [], toCome, earlier, undated].map((list) =>
      list.map(({ slug }) => slug).join(''),
    );
  };

  it.each([
    ['2026-10-15', ['a', 'bcde', '', 'yz']],
    ['2026-10-16', ['b', 'cde', 'a', 'yz']],
    // On its very day a session is still to come.
    ['2026-12-10', ['c', 'de', 'ba', 'yz']],
    ['2027-01-08', ['', '', 'edcba', 'yz']],
  ])('on %s', (today, expected) => {
    expect(order(today)).toEqual(expected);
  });
});

describe('every list of projects', () => {
  const day = fc
    .integer({ min: 0, max: 40 })
    .map((days) => new Date(Date.UTC(2026, 9, 1 + days)).toISOString().slice(0, 10));
  const some = fc.array(
    fc.record({ title: fc.constantFrom('A', 'B', 'C'), session: fc.option(day, { nil: undefined }) }),
  );

  it('is parted by the day, each project once: what is to come from the nearest, what was from the latest', () => {
    fc.assert(
      fc.property(some, day, (drawn, today) => {
        const projects = drawn.map((more, index) => listed(`p${index}`, more));
        const { next, toCome, earlier, undated } = listingOf(projects, today);
        const ahead = next ? [next, ...toCome] : [];
        expect(toCome.length > 0 && !next).toBe(false);
        const slugs = [...ahead, ...earlier, ...undated].map(({ slug }) => slug);
        expect(slugs.toSorted()).toEqual(projects.map(({ slug }) => slug).toSorted());
        const days = (list: typeof earlier): string[] => list.map(({ session = '' }) => session);
        expect(days(ahead)).toEqual(days(ahead).toSorted());
        expect(days(earlier)).toEqual(days(earlier).toSorted().toReversed());
        expect(days(ahead).every((session) => session >= today)).toBe(true);
        expect(days(earlier).every((session) => session < today && session !== '')).toBe(true);
        expect(days(undated).every((session) => session === '')).toBe(true);
        expect(undated.map(({ title }) => title)).toEqual(undated.map(({ title }) => title).toSorted());
      }),
      { seed: 23, numRuns: 200 },
    );
  });

  it('can be narrowed only to what some have and some have not', () => {
    const minutes = fc.option(fc.integer({ min: 5, max: 240 }), { nil: undefined });
    const tags = fc.uniqueArray(fc.constantFrom('box', 'card', 'gift'));
    fc.assert(
      fc.property(fc.array(fc.record({ minutes, tags }), { minLength: 1 }), (drawn) => {
        const projects = drawn.map((more, index) => listed(`p${index}`, more));
        const choices = new Map(choicesOf(projects, voice).map(({ name, options }) => [name, options]));
        for (const { value } of choices.get('time') ?? []) {
          const taken = projects.flatMap(({ minutes: own }) => own ?? []);
          expect(taken.some((own) => own <= Number(value))).toBe(true);
          expect(taken.some((own) => own > Number(value))).toBe(true);
        }
        const offered = (choices.get('tag') ?? []).map(({ value }) => value);
        expect(offered).toEqual([...new Set(projects.flatMap((project) => project.tags))].toSorted());
      }),
      { seed: 29, numRuns: 200 },
    );
  });
});

describe('when a session is', () => {
  it.each([
    [{}, 'Thursday, December\u00a010,\u00a02026'],
    [{ at: '18:30' }, 'Thursday, December\u00a010,\u00a02026, 6:30\u00a0PM'],
    [
      { at: '18:30', zone: 'America/Chicago' },
      'Thursday, December\u00a010,\u00a02026, 6:30\u00a0PM\u00a0CST',
    ],
    [{ at: '00:05', zone: 'Europe/Berlin' }, 'Thursday, December\u00a010,\u00a02026, 12:05\u00a0AM'],
  ])('%o', (clock, text) => {
    expect(whenText('2026-12-10', clock, voice)).toBe(text);
  });

  it('names the summer time in summer', () => {
    const clock = { at: '18:30', zone: 'America/Chicago' };
    expect(whenText('2027-06-24', clock, voice)).toBe(
      'Thursday, June\u00a024,\u00a02027, 6:30\u00a0PM\u00a0CDT',
    );
  });
});

describe('what there is to choose', () => {
  it('is what the projects differ in, levels from easy to hard, times that divide them', () => {
    const projects = [
      listed('a', { level: 'confident', minutes: 70, tags: ['box', 'garden'], occasion: 'spring' }),
      listed('b', { level: 'beginner', minutes: 25, tags: ['box'] }),
      listed('c', { level: 'my own word', minutes: 60 }),
      listed('d', { level: 'improver' }),
    ];
    expect(
      choicesOf(projects, voice).map(({ name, options }) => [name, options.map(({ value }) => value)]),
    ).toEqual([
      ['level', ['beginner', 'improver', 'confident', 'my own word']],
      ['time', ['30', '45', '60']],
      ['occasion', ['spring']],
      ['tag', ['box', 'garden']],
    ]);
  });

  it('is nothing where they are alike', () => {
    const alike = [
      listed('a', { level: 'beginner', minutes: 30 }),
      listed('b', { level: 'beginner', minutes: 30 }),
    ];
    expect(choicesOf(alike, voice)).toEqual([]);
  });
});

describe('the papers of a project', () => {
  it('stand on a line for each kind, and say of what they are when heard alone', () => {
    const lines = papersLines(
      'Box',
      [
        { line: 'site-handout', paper: 'site-paper-letter', href: 'box/box-letter.pdf' },
        { line: 'site-handout', paper: 'site-paper-large-print', href: 'box/box-large-print.pdf' },
        { line: 'site-template', paper: 'site-paper-a4', href: 'box/box-template-a4.pdf' },
      ],
      voice,
    );
    expect(lines).toEqual([
      {
        kind: 'Handout',
        papers: [
          { name: 'Letter', spoken: 'Letter: Handout of Box, PDF', href: 'box/box-letter.pdf' },
          {
            name: 'Large print',
            spoken: 'Large print: Handout of Box, PDF',
            href: 'box/box-large-print.pdf',
          },
        ],
      },
      {
        kind: 'Template',
        papers: [{ name: 'A4', spoken: 'A4: Template of Box, PDF', href: 'box/box-template-a4.pdf' }],
      },
    ]);
    // WCAG 2.2, 2.5.3: the name holds what is seen.
    for (const { name, spoken } of lines.flatMap(({ papers }) => papers))
      expect(spoken.startsWith(name)).toBe(true);
  });

  it('have no line of a kind that is not there', () => {
    const a4 = { line: 'site-handout', paper: 'site-paper-a4', href: 'a' };
    expect(papersLines('Box', [a4], voice).map(({ kind }) => kind)).toEqual(['Handout']);
    expect(papersLines('Box', [], voice)).toEqual([]);
  });
});

describe('where the site stands', () => {
  it.each([
    ['https://example.org/bench', 'https://example.org/bench/box/'],
    ['https://example.org/bench/', 'https://example.org/bench/box/'],
    ['http://example.org', 'http://example.org/box/'],
  ])('%s', (url, address) => {
    expect(absolute(siteOf(`url: ${url}\n`), 'box/')).toBe(address);
  });

  it('is nowhere without an address, and has lasting names all the same', () => {
    const site = siteOf('title: Bench\n');
    expect(absolute(site, 'box/')).toBeUndefined();
    expect(lastingName(site, 'a')).toBe(lastingName(siteOf('title: Bench\ncurrency: EUR\n'), 'a'));
    expect(lastingName(site, 'a')).not.toBe(lastingName(site, 'b'));
    expect(lastingName(site, 'a')).not.toBe(lastingName(siteOf('title: Other\n'), 'a'));
  });
});

describe('what a project leads on to', () => {
  const projects = [
    listed('keeper', { session: '2026-12-10', forms: ['clip-top box'], tags: ['box'], occasion: 'winter' }),
    listed('bulbs', { session: '2027-02-04', forms: ['clip-top box'], tags: ['box', 'garden'] }),
    listed('tray', { forms: ['tray'], tags: ['box'], occasion: 'winter' }),
    listed('soap', { forms: ['tuck-end box'], tags: ['box'] }),
    listed('card', { session: '2027-01-07', forms: ['single-fold card'], tags: ['card'] }),
    listed('clip', { session: '2027-03-04', forms: ['clip-top box'], tags: [] }),
  ];
  const related = relatedOf(projects);
  const told = (slug: string): unknown => {
    const { before, after, alike } = related.get(slug) ?? {};
    return [before?.slug, after?.slug, alike?.map(({ project, way }) => `${project.slug} by ${way}`)];
  };

  it('is its neighbors by the day, or by title, and those most like it', () => {
    expect(told('keeper')).toEqual([
      undefined,
      'card',
      ['bulbs by form', 'tray by occasion', 'clip by form'],
    ]);
    expect(told('card')).toEqual(['keeper', 'bulbs', []]);
    expect(told('tray')).toEqual(['soap', undefined, ['keeper by occasion', 'bulbs by tag']]);
    expect(told('soap')).toEqual([undefined, 'tray', ['keeper by tag', 'bulbs by tag']]);
  });

  it('is never the project itself, and nothing twice', () => {
    for (const [slug, { before, after, alike }] of related) {
      const all = [before, after, ...alike.map(({ project }) => project)].flatMap((each) => each?.slug ?? []);
      expect(all).not.toContain(slug);
      expect(new Set(all).size).toBe(all.length);
    }
  });
});
