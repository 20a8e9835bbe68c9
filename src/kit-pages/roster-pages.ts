import { wrapped } from '../drawing/lettering.ts';
import { parcelOf } from '../kit/parcel.ts';
import type { Person } from '../kit/roster.ts';
import type { Paper } from '../project/model.ts';
import { type KitInput, type KitPage, kitPageOf, wordsFor } from './shell.ts';
import type { KitWords } from './words.ts';

const BY = { post: 'roster-by-post', room: 'roster-by-room' } as const;
const HANDOUT = { inch: 'roster-inch', metric: 'roster-metric' } as const;

/** Who gets what and how, to tick off while packing: those by post first. */
export function packingList(input: KitInput, people: readonly Person[]): KitPage {
  const { kit } = input;
  const words = wordsFor(input);
  const { say } = words.voice;
  const ways = (['post', 'room'] as const).map((by) => {
    const own = people.filter((person) => person.by === by);
    return { heading: say(BY[by]), people: own.map((person) => personRow(person, input, words)) };
  });
  const title = say('roster-title', { title: kit.project.title.value });
  return kitPageOf(
    input,
    'kit-packing',
    { title, description: say('roster-description') },
    { ways: ways.filter((way) => way.people.length > 0), note: say('roster-parcel-note') },
  );
}

function personRow(person: Person, { kit }: KitInput, words: KitWords): object {
  const { voice } = words;
  const { grams, thickness } = parcelOf(kit, person.kits);
  const weight = new Intl.NumberFormat(voice.language, { maximumFractionDigits: 0 }).format(grams);
  return {
    name: person.name,
    kits: person.kits,
    handout: handoutOf(person, words),
    parcel: voice.phrase('roster-parcel', { weight, thickness: words.length(thickness) }),
    note: person.note,
  };
}

/** The handout they take, as it is called on a label; empty where they didn't say. */
export function handoutOf({ unit }: Person, { voice }: KitWords): string {
  return unit === undefined ? '' : voice.say(HANDOUT[unit]);
}

/** How a sheet of labels is divided, as CSS, and how much room each has for words, in points. */
type LabelSheet = { readonly css: string; readonly rows: number; readonly room: LabelRoom };

type LabelRoom = { readonly width: number; readonly height: number };

/**
 * Sheets of address labels as they are sold everywhere: 30 of 2 5/8 × 1 in on Letter, 21 of 63.5 × 38.1 mm on A4. The
 * measures are common practice and from memory.
 */
const LABELS: Readonly<Record<Paper, LabelSheet>> = {
  letter: {
    rows: 10,
    css: '--columns: 2.625in 2.625in 2.625in; --gap: 0.125in; --row: 1in; --edge: 0.5in 0.1875in;',
    room: { width: 166, height: 57.5 },
  },
  a4: {
    rows: 7,
    css: '--columns: 63.5mm 63.5mm 63.5mm; --gap: 2.5mm; --row: 38.1mm; --edge: 15.15mm 7.25mm;',
    room: { width: 157, height: 93.5 },
  },
};

/** Sizes of type in points, and the distance between two lines, in sizes. */
const SIZES = [9.5, 9, 8.5, 8, 7.5, 7, 6.5, 6, 5.5, 5, 4.5, 4];
const LINE = 1.25;

/** An address for each parcel, for a sheet of labels. */
export function addressLabels(input: KitInput, people: readonly Person[], paper: Paper): KitPage {
  const { say } = wordsFor(input).voice;
  const posted = people.filter(({ by }) => by === 'post');
  const { css, rows, room } = LABELS[paper];
  const a = rows * 3;
  const sheets = Array.from({ length: Math.ceil(posted.length / a) }, (_, index) => ({
    labels: posted.slice(index * a, (index + 1) * a).map(({ name, address }) => ({
      name,
      address,
      size: sizeFor([name, ...address], room),
    })),
  }));
  const title = say('roster-addresses', { title: input.kit.project.title.value });
  return kitPageOf(
    input,
    'kit-addresses',
    { title, description: say('roster-description') },
    { sheets, style: css },
  );
}

/** The largest type in which all of an address stands on its label: what is cut off there never arrives. */
function sizeFor(lines: readonly string[], room: LabelRoom): number {
  const highIn = (size: number): number =>
    lines.reduce((sum, line) => sum + wrapped(line, room.width / size).length, 0) * size * LINE;
  return SIZES.find((size) => highIn(size) <= room.height) ?? Math.min(...SIZES);
}
