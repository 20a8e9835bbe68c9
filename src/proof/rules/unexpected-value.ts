import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { quote, sayOne } from '../words.ts';

/** `actual` is what was written; empty where nothing was. */
type Facts =
  | {
      readonly actual: string;
      readonly key: string;
      /** What the key takes, in words. */
      readonly expected: string;
    }
  | {
      readonly actual: string;
      readonly misfit: Misfit;
      /** What it cannot stand beside, or was to stand for. */
      readonly other?: string;
      /** The outline it stands beside. */
      readonly shape?: string;
    };

/** What no other value would put right: it is in the wrong place, or names nothing. */
type Misfit =
  | 'step off its heading'
  | 'list in a line'
  | 'heading without words'
  | 'drawing of nothing'
  | 'edge of what has none'
  | 'ledger key'
  | 'one too many'
  | 'no key'
  | 'merge'
  | 'alias of nothing'
  | 'unseen character'
  | 'unit misspelled'
  | 'setting of another shape'
  | 'corners of a shape'
  | 'corner rounded twice'
  | 'dot in a name'
  | 'name of a panel'
  | 'no word of a pop-up'
  | 'word of a pop-up'
  | 'shape of a slot'
  | 'shape of a net';

export const unexpectedValue: Rule<Facts> = {
  severity: 'error',
  summary: 'Every value is of the kind its key takes.',
  why: 'Where a sheet asks for yes or no, a number or one of a few words, anything else would be a guess.',
  fails: { pieces: 'front: { stock: cream, cut: 3 x 4, count: two }', blames: 'two' },
  passes: { with: '2', insteadOf: 'two' },
  say: (facts) => {
    if ('misfit' in facts) return MISFITS[facts.misfit](facts.actual, facts.other ?? '', facts.shape ?? '');
    const { key, actual, expected } = facts;
    return {
      message:
        actual === '' ? `${quote(key)} is empty` : `${quote(actual)} is not a valid value for ${quote(key)}`,
      remedy: `write ${expected}`,
    };
  },
};

const MISFITS: Readonly<Record<Misfit, (actual: string, other: string, shape: string) => Words>> = {
  'step off its heading': (actual) => ({
    message: `${quote(actual)} is not on the heading of a step, or is the second one there`,
    remedy: 'put it on a ## heading, once',
  }),
  'list in a line': (actual) => ({
    message: `${quote(actual)} is a list, and a list cannot go here`,
    remedy: 'put it in a paragraph, not in a heading, a table or emphasized words',
  }),
  'heading without words': () => ({
    message: 'a step has a heading without words',
    remedy: 'write after ## what is done in this step',
  }),
  'drawing of nothing': (actual) => ({
    message: `${quote(actual)} does not say what it is a drawing of`,
    remedy: 'name a piece in it, such as ::drawing{of=box}',
  }),
  'edge of what has none': (actual) => ({
    message: `"from: ${actual}" is written here, but only scores are measured from an edge`,
    remedy: 'take it out',
  }),
  'ledger key': (actual) => ({
    message: `${quote(actual)} means nothing in a ledger`,
    remedy: 'put back the word that "sheetwright publish" wrote there',
  }),
  'one too many': (actual, other) => ({
    message: `${quote(other)} and ${quote(actual)} stand for each other, and both are here`,
    remedy: `write either ${other} or ${actual}, not both`,
  }),
  'no key': () => ({
    message: 'there is no word before this colon',
    remedy: 'write a word or a name before it',
  }),
  merge: (actual) => ({
    message: `${quote(actual)} is not read in a sheet`,
    remedy: 'write the keys themselves, or take them from a value of shared/ with "use:"',
  }),
  'alias of nothing': (actual, other) => ({
    message: `${quote(actual)} leads nowhere: no value above that has ended is marked &${other}`,
    remedy: 'write the value itself',
  }),
  'unseen character': (actual) => ({
    message: `${quote(actual)} has a character in it that cannot be seen`,
    remedy: 'type it again by hand',
  }),
  'unit misspelled': (actual, other) => ({
    severity: 'warning',
    message: `${quote(actual)} is no unit, so it is counted as a thing of that name`,
    remedy: `write ${quote(other)}, if that is meant`,
  }),
  'setting of another shape': (actual, other, shape) => ({
    message: `${quote(actual)} says nothing of ${sayOne(shape)}`,
    remedy: `take it out, or write ${quote(`shape: ${other}`)}`,
  }),
  'corners of a shape': (actual) => ({
    message: `"corners" rounds those of a rectangle, and this is ${sayOne(actual)}`,
    remedy: 'take "corners" out',
  }),
  'corner rounded twice': (actual, other) => ({
    message: `${quote(actual)} rounds a corner that ${quote(other)} rounds already`,
    remedy: 'give each corner one radius',
  }),
  'name of a panel': (actual, other) => ({
    message: `${quote(actual)} is what a panel of ${other} is called already`,
    remedy: 'give the opening a name of its own',
  }),
  'dot in a name': (actual) => ({
    message: `${quote(actual)} has a dot in it, and a dot separates a piece from a part of it`,
    remedy: `call it ${quote(actual.replace(/\.+/gu, '-'))}`,
  }),
  'shape of a slot': (actual) => ({
    message: `${quote(actual)} says nothing of a slot, which is one straight cut`,
    remedy: 'take it out, or write "size:" for a window',
  }),
  'no word of a pop-up': (actual) => ({
    message: `${quote(actual)} says nothing of a pop-up, which lies straight across its fold`,
    remedy: 'take it out; "across:" says which fold, and "at:" where on it',
  }),
  'word of a pop-up': (actual) => ({
    message: `${quote(actual)} says something of a pop-up only`,
    remedy: 'take it out, or write "pop-up:" and the width of the strip instead',
  }),
  'shape of a net': (actual) => ({
    message: `${quote(`shape: ${actual}`)} is for a flat piece, and this one has score lines`,
    remedy: 'take it out, and say with "trim", "taper" and "corners" how its cells are cut',
  }),
};
