import type { Finding } from '../finding.ts';
import type { ReadFont } from '../font-file.ts';
import { wholeFile } from '../frontmatter.ts';
import type { Schema } from '../grammar/grammar.ts';
import { made, mapOf, sectionOf, type Value, type ValueSpot } from '../grammar/grammar.ts';
import { listed, optional, plainly, required, section, usually } from '../grammar/keys.ts';
import { readValue } from '../grammar/read-value.ts';
import { moneyDecimals, NOTHING_SHARED, type Reader, shown } from '../grammar/reader.ts';
import {
  asChoice,
  asCount,
  asDate,
  asLanguage,
  asLength,
  asMatch,
  asPrintedLink,
  asSize,
  asText,
  asUnits,
} from '../grammar/values.ts';
import type { Bench, Paper, Site } from '../model.ts';
import { readEvery, readOn, repetitionOf, type Schedule } from '../schedule.ts';
import { type At, type SourceFile, sourceFile, startOf } from '../source.ts';
import { type Note, watchProperties } from '../watch.ts';
import { readYaml } from '../yaml/yaml-tree.ts';
import { MEETING } from './read-meeting.ts';
import { asPricing } from './read-pricing.ts';

const asCurrency: Value<At<string>> = asMatch('a currency code, such as USD', /^[a-z]{3}$/iu, ([code]) => {
  const upper = code.toUpperCase();
  return Intl.supportedValuesOf('currency').includes(upper) ? upper : undefined;
});

/** The usual home bench, common practice. */
const asBench: Value<Bench> = sectionOf('settings, such as { board: 1/8 in }', {
  board: usually(asLength, '1/8 in', 'The distance between two grooves of your score board.'),
  'metric board': optional(asLength, 'The same of a metric board, if people use one: `1 mm`, say.'),
  trimmer: usually(asLength, '12 in', 'The longest cut of your trimmer.'),
  'printer margin': usually(asLength, '1/4 in', "The border your printer can't print on."),
  mat: usually(asSize, '12 x 12 in', 'The mat of your cutting machine, for the files it reads.'),
  scores: plainly(
    asChoice(['solid', 'perforated'] as const),
    'solid',
    'How the cutting file has fold lines: for a scoring tool, or for a blade that leaves bridges.',
  ),
});

/** A time of day, as `HH:MM`. */
const asTime: Value<At<string>> = asMatch(
  'a time, such as 18:30',
  /^([01]?\d|2[0-3])[:.h]([0-5]\d)$/u,
  ([, hours = '', minutes]) => `${hours.padStart(2, '0')}:${minutes}`,
);

/** A time zone by its IANA name. */
const asZone: Value<At<string>> = asMatch('a time zone, such as America/Chicago', /^[\w+/-]+$/u, ([zone]) => {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone && zone;
  } catch {
    return undefined;
  }
});

const asEvery: Value<At<string>> = asMatch('week, 2 weeks, month or other thursday', /^.+$/su, ([text]) =>
  readEvery(text) ? text : undefined,
);

const asOn: Value<At<string>> = asMatch(
  'a day of the week, such as thursday, or second thursday where sessions are monthly',
  /^.+$/su,
  ([text]) => (readOn(text) ? text : undefined),
);

const SESSIONS = mapOf('{ every: 2 weeks, on: thursday }', {
  every: required(asEvery, 'How often: `week`, `2 weeks`, `4 weeks`, `month`; or `other tuesday` at once.'),
  on: optional(asOn, 'The day: `thursday`, or `second thursday` where they are monthly.'),
  at: optional(asTime, 'The time, **in quotes**: `"18:30"`.'),
  zone: optional(asZone, 'The time zone by its official name, such as `America/Chicago`.'),
  from: optional(asDate, 'The first day; that of your first project, by default.'),
  people: optional(
    asCount(1, 1000),
    'How many usually come: your cue card works out the preparation for them.',
  ),
  except: listed(asDate, 'Days on which there is none, in square brackets.'),
});

const asSchedule: Value<Schedule> = made(SESSIONS, (schedule, { reader }) => {
  reportClash(schedule, reader);
  return schedule;
});

/** A day of the month needs its number, a day of the week takes none; and the day is said once. */
function reportClash(schedule: Schedule, { report }: Reader): void {
  const { every, on } = schedule;
  if (!on || repetitionOf(schedule)) return;
  const [day = ''] = on.value.split(/\s+/u).slice(-1);
  const often = readEvery(every.value);
  const byWeeks =
    often?.weekday === undefined
      ? `${day} alone, since sessions go by weeks`
      : 'the day once: in "every:", or here';
  const expected = often?.unit === 'month' ? `which one of the month, such as first ${day}` : byWeeks;
  report({ rule: 'unexpected-value', at: on.at, facts: { key: 'on', expected, actual: shown(on.at) } });
}

const PAPER = asChoice<Paper>(['letter', 'a4']);

/** Addresses by which a page could run something, or that lead to another machine. */
const NO_EDITOR =
  /^(?:javascript|data|vbscript|blob|about):|^(?:https?|ftp|file):(?!\/\/(?:localhost|127\.0\.0\.1)[:/])/iu;

/** How an editor on this machine is told what to open. */
const asEditor: Value<At<string>> = asMatch(
  'an address of an editor on this machine with {file} in it, such as my-editor://open?file={file}&line={line}',
  /^[a-z][\w+.-]*:[^\s<>"]*\{file\}[^\s<>"]*$/iu,
  ([address]) => (NO_EDITOR.test(address) ? undefined : address),
);

const CURRENCY = { currency: plainly(asCurrency, 'USD', 'The three letters of your currency.') };

const SITE = sectionOf('settings, such as title: Paper bench', {
  title: plainly(asText, 'Paper projects', 'The name of your bench, over every page.'),
  summary: optional(asText, 'What your bench is, in one sentence, for the front page.'),
  url: optional(asPrintedLink, 'The web address of the site, for feeds, QR codes and link previews.'),
  language: optional(asLanguage, 'The language of the labels; `en` by default.'),
  paper: listed(PAPER, 'What handouts are printed on: `letter`, `a4`, or both (the default).'),
  units: plainly(asUnits, 'both', 'The editions made: `both`, or `inch` or `metric` alone.'),
  ...CURRENCY,
  editor: optional(
    asEditor,
    'The address by which your editor opens a file, **in quotes**, with `{file}`, `{line}` and `{column}` for where: `preview` leads from each finding to its line.',
  ),
  font: optional(
    asText,
    'A font, as TTF, OTF or WOFF in the workspace, for letters that ours lacks: `fonts/my-font.ttf`.',
  ),
  bench: section(asBench, 'Your own tools.'),
  pricing: optional(asPricing, 'What goes into the price of a class: `kit` names it.'),
  sessions: optional(asSchedule, 'When you meet.'),
  ...MEETING,
});

export const SITE_SCHEMA: Schema = SITE.schema;

/** The settings, telling which of them are read: `site.language`; `site` as a whole where it is not one of them alone. */
export function watchSite(site: Site, note: Note): Site {
  const keys = Object.keys(SITE.schema.properties ?? {});
  return watchProperties(site, (key) => (keys.includes(key) ? `site.${key}` : 'site'), note);
}

const NO_FILE: SourceFile = sourceFile('site.yaml', '');

/** Reads `site.yaml`. Every setting has a default, so a workspace without the file has a whole site too. */
export function readSite(
  file: SourceFile = NO_FILE,
  unreadable: readonly Finding[] = [],
  readFont: ReadFont = () => ({ problem: 'missing' }),
): Site {
  const { root, findings: broken } = readYaml(wholeFile(file));
  const findings = [...unreadable, ...broken];
  const spot: ValueSpot = { key: file.path, path: ['file', file.path], at: startOf(file) };
  const unheard: Reader = {
    report: () => {},
    unit: 'in',
    moneyDecimals: 2,
    forms: [],
    outlines: [],
    shared: NOTHING_SHARED,
  };
  // Prices are in the currency, wherever it stands.
  const { currency = 'USD' } = readValue(mapOf('settings', CURRENCY, true), root, spot, unheard) ?? {};
  const reader: Reader = {
    ...unheard,
    report: (finding) => findings.push(finding),
    moneyDecimals: moneyDecimals(currency),
  };
  const { language, paper, font: named, ...site } = readValue(SITE, root, spot, reader);
  const font = named && readFont(named.value);
  if (named && font && 'problem' in font)
    findings.push({
      rule: 'unreadable-font',
      at: named.at,
      facts: { path: named.value, problem: font.problem },
    });
  return {
    ...site,
    ...(named &&
      font && { font: 'problem' in font ? { path: named.value, file: '', digest: '', letters: [] } : font }),
    ...(named && { fontAt: named.at }),
    language: language?.value ?? 'en',
    ...(language && { languageAt: language.at }),
    paper: paper.length > 0 ? [...new Set(paper.map(({ value }) => value))] : ['letter', 'a4'],
    findings,
  };
}
