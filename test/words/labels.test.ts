import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { cautionsFor } from '../../src/handout/cautions.ts';
import type { LetterVerdict } from '../../src/handout/mail/us-letter.ts';
import { CORNERS_OF } from '../../src/project/corners.ts';
import { cornersKey } from '../../src/words/corners.ts';
import { html } from '../../src/words/safe-html.ts';
import { voiceOf } from '../../src/words/voice.ts';
import { labels, templates } from '../handout/sample.ts';

const source = fileURLToPath(new URL('../../src/', import.meta.url));
const code = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => readFileSync(`${source}${name}`, 'utf8'))
  .join('\n');
const markup = [...templates.pages.values(), ...templates.partials.values()].join('\n');

/** Words that are only ever said by a key put together from a value: `kind-tool`, `flap-left`. */
const PUT_TOGETHER =
  /^(?:kind|fold|corner-(?:top|bottom)|grade|edge|side|cut|flap|slit|cells|score-turn|score-inline|stamped|pdf|spoken-part|tip|drawing|projects|names|reads|allergen|part|closing|outline|shape|change|site-paper|site-find|site-sort|site-same|share-picture|base-(?:inside|behind)$|opening-(?:cut|slit|punched|left|right|top|bottom))/u;

/** Every one of them, as the compiler sees to. */
const CAUTIONS: Readonly<Record<ReturnType<typeof cautionsFor>[number]['id'], true>> = {
  blades: true,
  'hot-glue': true,
  heat: true,
  press: true,
  solvents: true,
  flames: true,
  'small-parts': true,
  food: true,
  allergens: true,
};
const VERDICTS: Readonly<Record<LetterVerdict, true>> = {
  letter: true,
  'too-small': true,
  'too-large': true,
  'too-thick': true,
  'too-heavy': true,
  'nonmachinable-square': true,
  'nonmachinable-long': true,
};

describe('the words of the sheets', () => {
  it('are all there that a template says', () => {
    const said = [...markup.matchAll(/say "([^"]+)"/gu)].map(([, key]) => key ?? '');
    expect(said.length).toBeGreaterThan(20);
    expect(said.filter((key) => !labels.texts.has(key))).toEqual([]);
  });

  it('are all there that the code says by name', () => {
    const said = [...code.matchAll(/\b(?<!settings\.)(?:say|phrase|count)\(\s*'([a-z][\w-]*)'/gu)].map(
      ([, key]) => key ?? '',
    );
    expect(said.length).toBeGreaterThan(40);
    const there = (key: string): boolean => labels.texts.has(key) || labels.texts.has(`${key}-other`);
    expect([...new Set(said)].filter((key) => !there(key))).toEqual([]);
  });

  it('are none that nobody says', () => {
    const cautions = Object.keys(CAUTIONS).flatMap((id) => [
      `caution-${id}`,
      `caution-${id}-text`,
      `cue-caution-${id}`,
    ]);
    const verdicts = Object.keys(VERDICTS).map((verdict) => `mail-${verdict}`);
    const made = [...cautions, ...verdicts, ...Object.keys(CORNERS_OF).map(cornersKey)];
    expect(made.filter((key) => !labels.texts.has(key))).toEqual([]);
    // What is said of centimeters takes the place of another label.
    const keys = [...labels.texts.keys()].map((key) => key.replace(/^cm-/u, ''));
    expect(keys.filter((key) => !labels.texts.has(key))).toEqual([]);
    const idle = keys.filter((key) => {
      if (made.includes(key)) return false;
      const base = key.replace(/-(?:one|other)$/u, '');
      return !PUT_TOGETHER.test(key) && !code.includes(`'${base}'`) && !markup.includes(`"${base}"`);
    });
    expect(idle).toEqual([]);
  });

  it('come with both numbers where they count', () => {
    const counted = [...labels.texts.keys()].filter((key) => key.endsWith('-one'));
    expect(counted.length).toBeGreaterThan(5);
    expect(counted.filter((key) => !labels.texts.has(key.replace(/-one$/u, '-other')))).toEqual([]);
  });
});

describe('a voice', () => {
  const voice = voiceOf(labels);

  it('sets values into its words, text escaped and markup not', () => {
    expect(voice.phrase('holds-item', { count: 2, item: '<b>' }).toString()).toBe('2\u00a0× &lt;b&gt;');
    expect(voice.phrase('holds-item', { count: 2, item: html`<i>pen</i>` }).toString()).toBe(
      '2\u00a0× <i>pen</i>',
    );
  });

  it('takes no value for another, whatever is in it', () => {
    expect(voice.phrase('holds-item', { count: 2, item: '{count} \ue000 \ue001' }).toString()).toBe(
      '2\u00a0× {count} \ue000 \ue001',
    );
  });

  it('counts, lists and tells the day', () => {
    expect([voice.count('minutes', 1), voice.count('minutes', 0)]).toEqual([
      '1\u00a0minute',
      '0\u00a0minutes',
    ]);
    expect([voice.duration(45), voice.duration(60), voice.duration(135)]).toEqual([
      '45\u00a0minutes',
      '1\u00a0hour',
      '2\u00a0hours 15\u00a0minutes',
    ]);
    expect(voice.list(['a', html`<i>b</i>`, '<c>']).toString()).toBe('a, <i>b</i>, and &lt;c&gt;');
    // 10 December 2026 is a Thursday: any perpetual calendar.
    expect(voice.day('2026-12-10')).toBe('Thursday, December\u00a010,\u00a02026');
    expect(voice.date('2026-12-10')).toBe('December\u00a010,\u00a02026');
  });

  it('speaks other languages by their own rules', () => {
    const german = voiceOf({ ...labels, language: 'de' });
    expect(german.day('2026-12-10')).toBe('Donnerstag, 10.\u00a0Dezember\u00a02026');
    expect(german.list(['a', 'b', 'c']).toString()).toBe('a, b und c');
  });

  it('holds its tongue about what it has no word for', () => {
    expect(() => voice.say('no-such-word')).toThrow('no label "no-such-word" in en');
  });
});
