import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, inject, it } from 'vitest';
import { ownPieceNamed } from '../../src/kit-pages/kinds.ts';
import { make } from '../../src/make/make.ts';
import { readLabels } from '../../src/make/package-files.ts';
import { requestSeason } from '../../src/make/season.ts';
import { dropSoftHyphens } from '../../src/words/hyphens.ts';
import { keysOf, labelsFor } from '../../src/words/languages.ts';
import { voiceOf } from '../../src/words/voice.ts';
import { BENCH } from '../kit/kits.ts';
import { TODAY } from '../made-demo.ts';

/** A bench in each language, with a project as somebody would write it there. */
const folder = fileURLToPath(new URL('.', import.meta.url));
const languages = readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
  entry.isDirectory() ? [entry.name] : [],
);
const labels = readLabels();

/** Every page of a bench's site, by its path, as it is read: without markup, styles and scripts. */
async function pagesIn(language: string): Promise<ReadonlyMap<string, string>> {
  const [root, out] = [join(folder, language), join(inject('temporary'), 'tongues', language)];
  const { findings, held } = await make({ root, out, namedFrom: folder, pdf: false, today: TODAY });
  expect(findings.map(({ message }) => message)).toEqual([]);
  expect(held).toEqual([]);
  const paths = readdirSync(out, { recursive: true, encoding: 'utf8' });
  const pages = paths.filter((path) => path.endsWith('.html'));
  return new Map(pages.map((path) => [path, textOf(readFileSync(join(out, path), 'utf8'))]));
}

/** Markup within a line. */
const INLINE = /<\/?(?:a|b|i|em|strong|small|span|time|q|sup|sub|svg|text|tspan)\b[^>]*>/gu;

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#x27': "'" };

/** What is read on a page, and what is read out of its pictures and fields. */
function textOf(page: string): string {
  const bare = page.replace(/<(script|style|code|pre|textarea)\b[\s\S]*?<\/\1>/gu, '');
  const heard = [...bare.matchAll(/ (?:aria-label|alt)="([^"]*)"/gu)].map(([, text]) => text);
  const text = [bare.replace(INLINE, '').replace(/<[^>]*>/gu, '\n'), ...heard].join('\n');
  return dropSoftHyphens(text.replace(/&([\w#]+);/gu, (whole, name: string) => ENTITIES[name] ?? whole));
}

/** English labels of three words and more that a language says in words of its own. */
function englishBeside(language: string): readonly string[] {
  const [english, own] = [labels.get('en'), labels.get(language)];
  if (!english || !own) throw new Error(`no labels in ${language}`);
  return keysOf(english, language).flatMap((key) => {
    const [text, other] = [english.texts.get(key), own.texts.get(key)];
    const isLong = text !== undefined && !text.includes('{') && /\p{L}+ \p{L}+ \p{L}+/u.test(text);
    return isLong && other !== undefined && other !== text && !/^(?:reads|names)-/u.test(key) ? [text] : [];
  });
}

/** What no printer of the language would set. Common practice; no source. */
const WRONG: Readonly<Record<string, RegExp>> = {
  de: /["'”«»]|\d\.\d+ (?:cm|mm|in)\b|\d:\d\d(?!\d| bis )(?!\u00a0Uhr)|[Bb]ogens? Letter US/u,
  fr: /["']|[^\s\u00a0][!?;](?=\s|$)| [:;!?»]|« |\d\.\d+\s(?:cm|mm|in)\b|\d:\d\d(?!\d)/u,
  nl: /["„]|\d\.\d+\s(?:cm|mm|in)\b/u,
  es: /["„]|\d\.\d+\s(?:cm|mm|in)\b|(?<!¡[^!\n]*)!|(?<!¿[^?\n]*)\?/u,
  'en-GB': /["„«»]|\d,\d+\s(?:cm|mm|in)\b|[Cc]enter|millimeter/u,
  'fr-CA': /["']| [:;!?»]|« |\d\.\d+\s(?:cm|mm|in)\b/u,
};

describe.each(languages)('a bench in %s', (language) => {
  it('proofs clean, and all its pages are in its language and set as it is', async () => {
    const pages = await pagesIn(language);
    expect(pages.size).toBeGreaterThanOrEqual(4);
    const english = language.startsWith('en') ? [] : englishBeside(language.split('-')[0] ?? language);
    for (const [path, text] of pages) {
      expect(
        english.filter((words) => text.includes(words)),
        path,
      ).toEqual([]);
      const wrong = WRONG[language];
      expect(
        text.split('\n').filter((line) => wrong?.test(line)),
        path,
      ).toEqual([]);
    }
  }, 60_000);
});

it('calls every sheet of a piece by the name that its project gives the piece, in a season too', async () => {
  const root = join(folder, 'fr');
  const orderFor = () => ({ spares: 0, bench: BENCH, work: 1 });
  const asked = { from: '2026-12-05', to: '2026-12-05', attendeesAt: () => 2, orderFor, clock: () => 0 };
  const reply = await requestSeason({ root, namedFrom: root, ...asked });
  if (reply.kind !== 'planned') throw new Error(reply.kind);
  const cut = reply.season.stocks.flatMap(({ kinds }) => kinds.flatMap(({ pieces }) => pieces));
  const names = cut.map((piece) => ownPieceNamed(piece, voiceOf(labelsFor(labels, 'fr').labels)));
  expect(names).toContain('boîte, fourreau');
});
