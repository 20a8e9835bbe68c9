import { describe, expect, it } from 'vitest';
import { dayNumber, weekdayOf } from '../../src/project/schedule.ts';
import { openDates } from '../../src/site/scheduled.ts';
import { siteOf } from './bench.ts';
import { openSite, visit } from './made.ts';

openSite();

const LISTS = `Object.fromEntries([...document.querySelectorAll('.projects')].filter((list) => list.checkVisibility())
  .map((list) => [list.querySelector('h2').textContent, [...list.querySelectorAll('.card')].filter((card) => card.checkVisibility()).map((card) => card.querySelector('h3').textContent)]))`;

describe('the list, read long after it was made', () => {
  it('has the next session of that day on top, and what was before it among the earlier ones', async () => {
    const { page, complaints } = await visit('index.html', { width: 1280, today: '2027-03-10' });
    const next = await page.$eval('.next', (section) => section.textContent?.replace(/\s+/gu, ' ').trim());
    expect(next).toContain('Next session');
    expect(next).toContain('Thursday, April 1, 2027');
    expect(next).toContain('Seed-paper note folder');
    expect(next).toContain('Reading room, Harbour Street Library');
    expect(await page.$eval('.next .to-calendar', (link) => link.getAttribute('href'))).toBe(
      'seed-paper-folder/seed-paper-folder.ics',
    );
    const lists = (await page.evaluate(LISTS)) as Record<string, string[]>;
    expect(lists['Upcoming sessions']).not.toContain('Seed packet keeper');
    // The latest first.
    expect(lists['Earlier projects']?.slice(0, 2)).toEqual([
      'Short pencil box',
      'Gate-fold card with its own envelope',
    ]);
    expect(lists['Earlier projects']).toContain('Seed packet keeper');
    expect(complaints).toEqual([]);
  });

  it('offers no session when all are over, and no date that is over', async () => {
    const { page } = await visit('index.html', { width: 390, today: '2027-10-01' });
    expect(await page.$eval('.next', (section) => section.checkVisibility())).toBe(false);
    expect(await page.evaluate(LISTS)).not.toHaveProperty('Upcoming sessions');
    const days = (await page.evaluate(
      `[...document.querySelectorAll('.dates [data-day]')].filter((day) => day.checkVisibility()).map((day) => day.dataset.day)`,
    )) as string[];
    expect(days).toHaveLength(4);
    expect(days.every((day) => day >= '2027-10-01')).toBe(true);
  });

  it('calls no session the next without a script', async () => {
    const { page } = await visit('index.html', { width: 390, scripts: false });
    const words = await page.$eval('main', (main) => main.textContent ?? '');
    expect(words).not.toMatch(/next session|to come/iu);
    expect(await page.$eval('#next', (heading) => heading.textContent)).toBe('Session');
  });

  it.each(['seed-packet-keeper/index.html', 'seed-packet-keeper/share/index.html'])(
    'offers the calendar of %s up to its day alone',
    async (path) => {
      for (const [today, offered] of [
        ['2026-12-10', true],
        ['2026-12-11', false],
      ] as const) {
        const { page } = await visit(path, { width: 390, today });
        expect(await page.$eval('.to-calendar', (place) => place.checkVisibility())).toBe(offered);
      }
    },
  );
});

describe('where and with whom', () => {
  it.each(['index.html', 'seed-packet-keeper/index.html', 'seed-packet-keeper/share/index.html'])(
    'is told on %s',
    async (path) => {
      const { page } = await visit(path, { width: 390 });
      const words = await page.$eval('main', (main) => main.textContent?.replace(/\s+/gu, ' ') ?? '');
      for (const said of ['Reading room, Harbour Street Library', 'About the library', 'Free to print'])
        expect(words).toContain(said);
      expect(words).toMatch(/Thursday, December\s10,\s2026, 6:30\sPM\sCST/u);
      expect(await page.$eval('a[href^="mailto:"]', (link) => link.getAttribute('href'))).toBe(
        'mailto:bench@example.org',
      );
    },
  );

  it('says in one sentence what the site is', async () => {
    const { page } = await visit('index.html', { width: 390 });
    expect(await page.$eval('.about', (line) => line.textContent)).toMatch(/^Papercraft to make together/u);
  });
});

describe('the days that the schedule promises', () => {
  const weeks = siteOf(
    'sessions: { every: 4 weeks, on: thursday, from: 2026-10-15, except: [2026-12-10] }',
  ).sessions;

  it('are those of no project, none that is left out, none before today', () => {
    expect(weeks && openDates(weeks, ['2027-01-07'], '2026-11-13', 3)).toEqual([
      '2027-02-04',
      '2027-03-04',
      '2027-04-01',
    ]);
    expect(weeks && openDates(weeks, [], '2026-10-01', 2)).toEqual(['2026-10-15', '2026-11-12']);
  });

  it('are all of the weekday, four weeks apart', () => {
    const days = (weeks && openDates(weeks, [], '2027-01-01', 6))?.map(dayNumber) ?? [];
    expect(new Set(days.map(weekdayOf))).toEqual(new Set([3]));
    expect(new Set(days.slice(1).map((day, index) => day - (days[index] ?? 0)))).toEqual(new Set([28]));
  });

  it('are none where nothing says when they begin', () => {
    const bare = siteOf('sessions: { every: week, on: thursday }').sessions;
    expect(bare && openDates(bare, [], '2027-01-01', 6)).toEqual([]);
  });
});
