import fc from 'fast-check';
import { Length } from '../../../src/measure/length.ts';
import { parseLength, parseSizes } from '../../../src/measure/notation.ts';
import type { Form } from '../../../src/shape/form.ts';
import { forms } from '../../../src/shape/forms/index.ts';

type Settings = Readonly<Record<string, string>>;

/** A length in sixteenths as a person may write it. */
export function sixteenths(least: number, most: number, multiple = 1): fc.Arbitrary<number> {
  return fc
    .integer({ min: Math.ceil(least / multiple), max: Math.floor(most / multiple) })
    .map((n) => n * multiple);
}

const text = (count: number): string => `${count}/16`;
const joined = (...counts: readonly number[]): string => counts.map(text).join(' x ');

/** Width × depth × height in sixteenths; `deep` gives the most a depth may be for its width. */
function box(multiple: number, deep: (width: number) => number = () => 96): fc.Arbitrary<Settings> {
  return sixteenths(16, 112, multiple).chain((width) =>
    fc
      .record({
        depth: sixteenths(16, Math.max(16, Math.min(96, deep(width))), multiple),
        height: sixteenths(16, 128, multiple),
        key: fc.constantFrom('inside', 'outside'),
      })
      .map(({ depth, height, key }) => ({ [key]: joined(width, depth, height) })),
  );
}

function with_(base: fc.Arbitrary<Settings>, more: fc.Arbitrary<Settings>): fc.Arbitrary<Settings> {
  return fc.tuple(base, more).map(([first, second]) => ({ ...first, ...second }));
}

function perhaps(key: string, value: fc.Arbitrary<string>): fc.Arbitrary<Settings> {
  return fc.option(value, { nil: undefined }).map((each) => (each === undefined ? {} : { [key]: each }));
}

function card(multiple: number): fc.Arbitrary<Settings> {
  return fc
    .tuple(sixteenths(16, 128, multiple), sixteenths(16, 128, multiple))
    .map((sides) => ({ size: joined(...sides) }));
}

/**
 * For each form, settings it takes, every number a multiple of `multiple` sixteenths of an inch: 1 for a ruler's,
 * 2 for those of a board's grooves.
 */
export function anySettings(multiple: 1 | 2 = 1): Readonly<Record<string, fc.Arbitrary<Settings>>> {
  const known = ownSettings(multiple);
  return Object.fromEntries(
    forms.map((form) => [form.name, known[form.name] ?? settingsLike(form, multiple)]),
  );
}

/** Of a form that says no more of itself: its example, each length a little longer, with any of its words. */
function settingsLike({ example, parameters }: Form, multiple: 1 | 2): fc.Arbitrary<Settings> {
  const lengths = example.settings.map((line) => {
    const [key = '', value = ''] = line.split(': ');
    const read = parameters.find((each) => each.key === key)?.kind;
    if (read === 'count') return fc.constant<Settings>({ [key]: value });
    const count = read === 'volume' ? 3 : read === 'size' ? 2 : 1;
    const sides = count === 1 ? parseLength(value, 'in') : undefined;
    const several = count === 1 ? undefined : parseSizes(value, 'in', count);
    const found = sides?.ok ? [sides.value] : several?.ok ? several.value.map(({ length }) => length) : [];
    const each = found.map((length) => {
      const { numerator, denominator } = length.over(Length.of(multiple, 16, 'in'));
      const least = Number(numerator / denominator) * multiple;
      return sixteenths(least, least + 32, multiple);
    });
    return fc
      .tuple(...each)
      .map((sixteenth): Settings => (each.length > 0 ? { [key]: joined(...sixteenth) } : { [key]: value }));
  });
  const words = parameters.flatMap(({ key, choices }) =>
    choices ? [perhaps(key, fc.constantFrom(...choices))] : [],
  );
  return [...lengths, ...words].reduce(with_);
}

function ownSettings(multiple: 1 | 2): Readonly<Partial<Record<string, fc.Arbitrary<Settings>>>> {
  const short = sixteenths(4, 8, multiple).map(text);
  return {
    'single-fold card': with_(card(multiple), perhaps('fold', fc.constantFrom('left', 'top'))),
    'gate-fold card': card(multiple),
    'accordion card': with_(card(multiple), perhaps('pages', fc.integer({ min: 2, max: 12 }).map(String))),
    'clip-top box': with_(
      box(multiple, (width) => width),
      with_(perhaps('tab', short), perhaps('flange', short)),
    ),
    'tuck-end box': with_(
      box(multiple),
      with_(perhaps('tuck', short), perhaps('ends', fc.constantFrom('straight', 'reverse'))),
    ),
    tray: with_(box(multiple), perhaps('tab', short)),
    'lidded tray': with_(box(multiple), perhaps('lid', sixteenths(8, 16, multiple).map(text))),
    'slide box': with_(
      box(multiple),
      perhaps(
        'clearance',
        fc.constantFrom('1/16', '1/8', '3/16').filter((each) => multiple === 1 || each === '1/8'),
      ),
    ),
    'pillow box': sixteenths(32, 128, multiple).chain((width) =>
      fc
        .tuple(
          sixteenths(2 * width, 3 * width, multiple),
          sixteenths(4, Math.floor((2 * width) / 5), multiple),
        )
        .map(([length, depth]) => ({ size: joined(width, length), depth: text(depth) })),
    ),
    envelope: fc
      .tuple(
        fc.constantFrom('card', 'inside', 'outside'),
        sixteenths(40, 128, multiple),
        sixteenths(40, 128, multiple),
      )
      .map(([key, width, height]) => ({ [key]: joined(width, height) })),
    'gusseted bag': box(multiple, (width) => width),
    'gable box': box(multiple, (width) => width),
    'belly band': fc
      .tuple(sixteenths(16, 128, multiple), sixteenths(1, 48, 1), sixteenths(4, 48, multiple))
      .map(([width, depth, height]) => ({ around: joined(width, depth), height: text(height) })),
    'polygon box': with_(
      fc
        .tuple(fc.integer({ min: 3, max: 8 }), sixteenths(24, 64, multiple), sixteenths(16, 96, multiple))
        .map(([sides, side, height]) => ({ sides: String(sides), side: text(side), height: text(height) })),
      perhaps('lid', sixteenths(8, 16, multiple).map(text)),
    ),
    tag: fc
      .tuple(sixteenths(16, 64, multiple), sixteenths(24, 96, multiple))
      .map((sides) => ({ size: joined(...sides) })),
  };
}

/** Anything a person may type where a form takes a number, sensible or not. */
const anyText: fc.Arbitrary<string> = fc.oneof(
  sixteenths(1, 320).map(text),
  fc.tuple(sixteenths(1, 200), sixteenths(1, 200)).map((sides) => joined(...sides)),
  fc.tuple(sixteenths(1, 200), sixteenths(1, 200), sixteenths(1, 200)).map((sides) => joined(...sides)),
  fc.integer({ min: 0, max: 999 }).map(String),
  fc.constantFrom(
    '0',
    '-3',
    '1/0',
    'two',
    '3 x',
    '5000 mm',
    '0.0001',
    '1/999999',
    'left',
    'reverse',
    '3 x 1 x 4 x 2',
  ),
);

export function anythingFor(keys: readonly string[]): fc.Arbitrary<Settings> {
  return fc
    .uniqueArray(fc.constantFrom(...keys))
    .chain((chosen) =>
      fc
        .array(anyText, { minLength: chosen.length, maxLength: chosen.length })
        .map((texts) => Object.fromEntries(chosen.map((key, index) => [key, texts[index] ?? '']))),
    );
}
