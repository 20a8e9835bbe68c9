import { Length, type Unit } from '../measure/length.ts';
import { Fields } from './fields.ts';
import type { Finding } from './finding.ts';
import { wholeFile } from './frontmatter.ts';
import { KNOWN_KEYS } from './known-keys.ts';
import type { Bench, Paper, Schedule, Site } from './model.ts';
import { present } from './optional.ts';
import { type Reader, type ReadValue, refuse } from './reader.ts';
import { readEvery, readOn, repetitionOf } from './schedule.ts';
import { type At, type SourceFile, sourceFile, startOf } from './source.ts';
import { asChoice, asDate, asLanguage, asLength, asLink, asMatch, asText } from './values.ts';
import { readYaml, type YamlMap } from './yaml-tree.ts';

const NO_FILE: SourceFile = sourceFile('site.yaml', '');

/** Reads `site.yaml`. Every setting has a default, so a workspace without the file has a whole site too. */
export function readSite(file: SourceFile = NO_FILE): Site {
  const { root, findings: broken } = readYaml(wholeFile(file));
  const findings: Finding[] = [...broken];
  const reader: Reader = {
    report: (finding) => findings.push(finding),
    unitIn: (): Unit => 'in',
    moneyDecimals: 2,
    forms: [],
    shared: { stock: new Map(), supplies: new Map(), pieces: new Map() },
  };
  if (root.kind === 'text' || root.kind === 'list') {
    refuse(root, file.path, 'settings, such as title: Paper bench', reader);
  }
  const map: YamlMap = root.kind === 'map' ? root : { kind: 'map', entries: [], at: startOf(file) };
  const fields = new Fields(map, file.path, reader, startOf(file), KNOWN_KEYS.site);
  const language = fields.read('language', asLanguage);
  const papers = fields.list('paper', asChoice<Paper>(['letter', 'a4']));
  return {
    title: fields.read('title', asText)?.value ?? 'Paper projects',
    ...present('url', fields.read('url', asLink)),
    language: language?.value ?? 'en',
    ...present('languageAt', language?.at),
    paper: papers.length > 0 ? [...new Set(papers.map(({ value }) => value))] : ['letter', 'a4'],
    currency: fields.read('currency', asCurrency)?.value ?? 'USD',
    bench: readBench(fields, file, reader),
    ...present('sessions', fields.read('sessions', asSchedule)),
    findings,
  };
}

const asCurrency: ReadValue<At<string>> = asMatch(
  'a currency code, such as USD',
  /^[a-z]{3}$/iu,
  ([code]) => {
    const upper = code.toUpperCase();
    return Intl.supportedValuesOf('currency').includes(upper) ? upper : undefined;
  },
);

/** The usual home bench, common practice: grooves every 1/8 in, a 12 in trimmer, a printer's 1/4 in margin. */
function readBench(site: Fields, file: SourceFile, reader: Reader): Bench {
  const usual = (numerator: number, denominator: number): At<Length> => ({
    value: Length.of(numerator, denominator, 'in'),
    at: startOf(file),
  });
  const node = site.node('bench');
  if (node && node.kind !== 'map') refuse(node, 'bench', 'settings, such as { board: 1/8 in }', reader);
  const map: YamlMap = node?.kind === 'map' ? node : { kind: 'map', entries: [], at: site.at };
  const fields = new Fields(map, 'bench', reader, site.keyPlace('bench'), KNOWN_KEYS.bench);
  return {
    board: fields.read('board', asLength) ?? usual(1, 8),
    ...present('metricBoard', fields.read('metric board', asLength)),
    trimmer: fields.read('trimmer', asLength) ?? usual(12, 1),
    printerMargin: fields.read('printer margin', asLength) ?? usual(1, 4),
  };
}

/** A time of day, as `HH:MM`. */
const asTime: ReadValue<At<string>> = asMatch(
  'a time, such as 18:30',
  /^([01]?\d|2[0-3])[:.]([0-5]\d)$/u,
  ([, hours = '', minutes]) => `${hours.padStart(2, '0')}:${minutes}`,
);

/** A time zone by its IANA name. */
const asZone: ReadValue<At<string>> = asMatch(
  'a time zone, such as America/Chicago',
  /^[\w+/-]+$/u,
  ([zone]) => {
    try {
      return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone && zone;
    } catch {
      return undefined;
    }
  },
);

const asEvery: ReadValue<At<string>> = asMatch('week, 2 weeks, 4 weeks or month', /^.+$/su, ([text]) =>
  readEvery(text) ? text : undefined,
);

const asOn: ReadValue<At<string>> = asMatch(
  'a day of the week, such as thursday, or second thursday where sessions are monthly',
  /^.+$/su,
  ([text]) => (readOn(text) ? text : undefined),
);

const asSchedule: ReadValue<Schedule> = (node, key, reader) => {
  if (node.kind !== 'map') return refuse(node, key, '{ every: 2 weeks, on: thursday }', reader);
  const fields = new Fields(node, key, reader, node.at, KNOWN_KEYS.sessions);
  const every = fields.require('every', asEvery);
  const schedule = {
    ...present('on', fields.read('on', asOn)),
    ...present('at', fields.read('at', asTime)),
    ...present('zone', fields.read('zone', asZone)),
    ...present('from', fields.read('from', asDate)),
    except: fields.list('except', asDate),
  };
  if (every) refuseClash({ every, ...schedule }, fields, reader);
  return every && { every, ...schedule };
};

/** A day of the month needs its number, a day of the week takes none. */
function refuseClash(schedule: Schedule, fields: Fields, reader: Reader): void {
  const { every, on } = schedule;
  const node = fields.node('on');
  if (!on || !node || repetitionOf(schedule)) return;
  const [day = ''] = on.value.split(/\s+/u).slice(-1);
  const monthly = readEvery(every.value)?.unit === 'month';
  refuse(
    node,
    'on',
    monthly ? `which one of the month, such as first ${day}` : `${day} alone, since sessions go by weeks`,
    reader,
  );
}
