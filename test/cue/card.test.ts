import { describe, expect, it } from 'vitest';
import { cueCardHtml } from '../../src/cue/card.ts';
import { type CardRoom, ROOMS } from '../../src/cue/room.ts';
import { NO_REVISIONS } from '../../src/project/ledger/ledger.ts';
import { all, type Node, one, parseMarkup, textOf } from '../handout/markup.ts';
import { labels, renderer, type Sample, sample, sampleOf, sheetHtml } from '../handout/sample.ts';

const SITE = 'sessions: { every: 2 weeks, on: thursday, at: "18:30" }\n';

const SHEET = `---
title: Pencil "box"
session: 2026-12-10
measurements:
  unit: in
  stock:
    blue:  { name: Blue cardstock, sheet: 8 1/2 x 11, color: "#2f4b66" }
    cream: { name: Cream cardstock, sheet: 8 1/2 x 11 }
  pieces:
    box:   { stock: blue, form: lidded tray, inside: 4 1/4 x 3 3/4 x 1, lid: 3/4 }
    label: { stock: cream, cut: 2 11/16 x 1, on: box.top }
    slip:  { stock: cream, cut: 2 x 3, count: 12 }
supplies:
  - { item: Strong double-sided tape, kind: adhesive, each: 12 in, instead: wet glue }
  - { item: Paper trimmer, kind: tool }
  - { item: Hot glue gun, kind: adhesive }
  - { item: Anchor stamp, kind: stamp, instead: an anchor cut freehand }
  - { item: Blue ink, kind: ink }
  - { item: Bone folder, kind: tool, instead: the back of a spoon }
---
Hello.

:::host
Wave to the camera.
:::

## Cut and score :step{minutes=10 ahead}
Cut :piece[box] and :count[slip] of the :piece[slip]. :scores[box]

:::host
Cut two.
:::

## Stamp the label :step{minutes=4 dry=10}
Stamp the anchor on the :piece[label].

## Fold :step{minutes=5}
Fold and use the bone folder. ![A gun](photos/gun.jpg)

:::host
Hold up the :piece[label].
:::

## Stick the label on :step{minutes=3}
Put tape on the :piece[label].

:::caution
Do not <b>press</b>.
:::

## Close it
Close it.

- A list
  :::host
  Say *goodbye*.
  :::
`;

const project = sample(SHEET, { 'site.yaml': SITE, 'sample/photos/gun.jpg': 'x' });
const [everything = ROOMS[0], ...less] = ROOMS;

function cardOf({ editions, site }: Sample, room: CardRoom | undefined = everything): string {
  if (!room) throw new Error('there is no room');
  const styles = { kind: 'inline', css: '' } as const;
  return cueCardHtml(
    { editions, site, labels, ledger: NO_REVISIONS, styles, renderer, pictures: new Map() },
    room,
  );
}

function pageOf(from: Sample, room: CardRoom | undefined = everything): Node {
  return parseMarkup(cardOf(from, room));
}

function missingIn(from: Sample, room: CardRoom): readonly string[] {
  return all(pageOf(from, room), '.cue-missing').flatMap((said) => textOf(said).split(/(?<=\.)\s/u));
}

const page = pageOf(project);
const text = textOf(one(page, 'body'));

describe('a cue card', () => {
  it('shows no picture twice, and in one of a folded piece only what has been put on it by then', () => {
    const body = [
      '## Fold\nFold :piece[card].\n\n::drawing{of=card view=folded}',
      '## Dress\nStick :piece[mat] to the front.',
      '## Dress more\nPress the :piece[mat] on.',
      '## Close\nStick the :piece[label] on.\n\n::drawing{of=card view=folded}',
    ].join('\n\n');
    const card = sampleOf(
      'unit: in\npieces:\n  card: { form: single-fold card, size: 4 x 5 }\n  mat: { cut: 3 x 4, on: card.front }\n  label: { cut: 2 x 1, on: card.back }',
      body,
    );
    const steps = all(pageOf(card), '.cue-step').filter((row) => /\d\. /u.test(textOf(row)));
    const shown = steps.map((row) => all(row, 'svg').map(({ attributes }) => attributes['aria-label']));
    expect(shown).toEqual([
      [expect.stringMatching(/^Card, folded: [^;]*$/u)],
      [expect.stringMatching(/mat/u)],
      [],
      [expect.stringMatching(/label/u)],
    ]);
    expect(shown[0]?.[0]).not.toMatch(/mat|label/u);
  });

  it('says all its words', () => {
    expect(text).not.toMatch(/\{\w+\}|undefined|\[object/u);
    expect(text).toContain('Pencil “box”');
    expect(text).toContain('Thursday, December 10, 2026');
  });

  it('reads out the very cuts and scores of the sheet', () => {
    const sheet = parseMarkup(sheetHtml(project, 'large-print'));
    const sizes = (root: Node, rows: string): string[][] =>
      all(one(root, rows), 'tr').flatMap((row) => {
        const cells = all(row, 'td')
          .map(textOf)
          .filter((cell) => / (?:in|mm)$/u.test(cell));
        return cells.length === 2 ? [cells] : [];
      });
    expect(sizes(page, '.cue-cuts')).toEqual(sizes(sheet, '.cut-list'));
    expect(sizes(page, '.cue-cuts')).toHaveLength(4);
    const moves = all(sheet, '.move').map((move) => [
      textOf(one(move, 'th')),
      ...all(move, 'td').map(textOf),
    ]);
    const said = all(one(page, 'main'), '.cue-scores')
      .flatMap((piece) => all(piece, 'li'))
      .map((move) => {
        const words = textOf(move);
        const positions = textOf(one(move, '.cue-positions'));
        const lead = textOf(one(move, '.cue-lead'));
        return [
          words.slice(0, -positions.length).trim().replace(/:$/u, ''),
          lead,
          positions.slice(lead.length).trim(),
        ];
      });
    expect(said).toEqual(moves);
    expect(said).toHaveLength(4);
  });

  it('tells what to do ahead, with counts', () => {
    const [only, ...others] = all(one(page, '.cue-ahead'), 'li').map(textOf);
    expect(others).toEqual([]);
    expect(only).toMatch(/^1\. Cut and score 10 minutes for each person; 1 × box\s?12 × slip Cut two\.$/u);
  });

  it('reckons the preparation for as many as usually come', () => {
    const many = sample(SHEET, {
      'site.yaml': SITE.replace(' at:', ' people: 8, at:'),
      'sample/photos/gun.jpg': 'x',
    });
    const [only = ''] = all(one(pageOf(many), '.cue-ahead'), 'li').map(textOf);
    expect(only).toMatch(/^1\. Cut and score 1 h(?:our)? 20 min(?:utes)? for 8 people; 8 × box\s?96 × slip/u);
  });

  it('runs the clock, waits for what dries, and says where a step has no minutes', () => {
    const rows = all(page, '.cue-step').map((row) => {
      const picture = all(row, '.cue-picture').map(textOf).join('');
      return textOf(row).replace(picture, '').replace(/\s+/gu, ' ');
    });
    expect(rows).toEqual([
      '6:30 PM Welcome, read the cautions aloud Wave to the camera.',
      '6:30 PM 2. Stamp the label 4 minutes, dry at 6:44 PM Stamp the anchor on the label.',
      expect.stringMatching(/^6:34 PM 3\. Fold 5 minutes Hold up the label 2 11\/16 × 1 in/u),
      '6:44 PM 4. Stick the label on 3 minutes Starts after 5 minutes of drying: not dry until then. Say: Do not press. Put tape on the label.',
      // Nobody knows how long it takes, nor when all is done.
      '6:47 PM 5. Close it Say goodbye. Close it. A list',
      'Finished',
    ]);
    expect(textOf(one(page, '.cue-when')).replace(/ /gu, ' ')).toMatch(/6:30 PM to 6:47 PM or later$/u);
  });

  it('says what is glued, or else what is cut, of a step with nothing else in it', () => {
    const listed = SHEET.replace('Close it.\n', ':trims[box]\n\n:assembly[box]\n').replace('- A list\n', '');
    const trimmed = listed.replace(':assembly[box]\n', '');
    const said = (sheet: string, room: CardRoom): string =>
      textOf(all(pageOf(sample(sheet, { 'sample/photos/gun.jpg': 'x' }), room), '.cue-step').at(-2) as Node);
    expect(said(listed, everything)).toMatch(/Glue the outside of .+ to the inside of/u);
    expect(said(trimmed, everything)).toMatch(/Cut straight beside|Cut away/u);
    expect(said(listed, { ...everything, lists: 'without a sentence' })).toMatch(/Glue the outside of/u);
    expect(said(listed, { ...everything, lists: 'none' })).toMatch(
      /Fold and glue it as listed in this step of the sheet\.$/u,
    );
    expect(said(trimmed, { ...everything, lists: 'none' })).toMatch(
      /Cut it as listed in this step of the sheet\.$/u,
    );
  });

  it('says what is glued after what is said, where there is room, or else that it is on the sheet', () => {
    const sheet = SHEET.replace('Close it.\n', 'Close it.\n\n:trims[box]\n\n:assembly[box]\n');
    const said = (room: CardRoom): string =>
      textOf(all(pageOf(sample(sheet, { 'sample/photos/gun.jpg': 'x' }), room), '.cue-step').at(-2) as Node);
    expect(said(everything)).toMatch(/Close it\. .*Glue the outside of .+ to the inside of/u);
    expect(said({ ...everything, lists: 'without a sentence' })).toMatch(
      /Close it\. .*Fold and glue it as listed in this step of the sheet\.$/u,
    );
  });

  it('counts the slits apart from how long they are', () => {
    expect(all(page, '.cue-slits').map(textOf)).toContainEqual(
      expect.stringMatching(/^Slits, \S+: 4 of 1 in/u),
    );
  });

  it('counts from nought where nobody said when a session starts', () => {
    const unset = pageOf(sample(SHEET, { 'sample/photos/gun.jpg': 'x' }));
    expect(textOf(one(unset, '.cue-when'))).toMatch(/0:00 to 0:17 or later$/u);
  });

  it.each<[string, string, string]>([
    // Its steps have 22 minutes; what is left of 50 goes to the one without, behind the 17 of the clock.
    ['minutes: 50', '0:45', ' about 28 minutes'],
    ['minutes: 22', '0:17 or later', ''],
    ['minutes: 10', '0:17 or later', ''],
  ])('ends when the project says, if it says of a step without minutes: %s', (minutes, end, lasts) => {
    const from = sample(SHEET.replace('session:', `${minutes}\nsession:`), { 'sample/photos/gun.jpg': 'x' });
    const page = pageOf(from);
    expect(textOf(one(page, '.cue-when'))).toMatch(new RegExp(`0:00 to ${end}$`, 'u'));
    expect(textOf(one(page, '.cue-end'))).toBe(lasts ? `${end} Finished` : 'Finished');
    expect(textOf(one(page, 'main'))).toContain(`5. Close it${lasts} Say goodbye`);
  });

  it('lays the table in order of use', () => {
    const laid = all(one(page, '.cue-table'), 'li').map(textOf);
    const tape = 'Strong double-sided tape, 12 in per person, or wet glue';
    const [stamp, folder] = ['Anchor stamp or an anchor cut freehand', 'Bone folder or the back of a spoon'];
    // Supplies as they are listed, where no step says what it uses; what its words name tells nothing.
    const rest = [tape, 'Paper trimmer', 'Hot glue gun', stamp, 'Blue ink', folder];
    expect(laid).toEqual(['1 box and slip', '2 label', ...rest.map((item) => `– ${item}`)]);
    const used = SHEET.replace('{minutes=10 ahead}', '{minutes=10 ahead uses="trimmer, bone folder"}')
      .replace('{minutes=4 dry=10}', '{minutes=4 dry=10 uses="anchor stamp, blue ink"}')
      .replace('{minutes=3}', '{minutes=3 uses="strong tape, anchor stamp"}');
    const ordered = pageOf(sample(used, { 'sample/photos/gun.jpg': 'x' }));
    expect(all(one(ordered, '.cue-table'), 'li').map(textOf)).toEqual([
      '1 box and slip',
      '1 Paper trimmer',
      `1 ${folder}`,
      '2 label',
      `2 ${stamp}`,
      '2 Blue ink',
      `4 ${tape}`,
      '– Hot glue gun',
    ]);
  });

  it('says the cautions of the sheet in short', () => {
    const sheet = parseMarkup(sheetHtml(project, 'letter'));
    const named = all(one(sheet, '.cautions'), 'dt').map((term) => `${textOf(term)}:`);
    const said = all(one(page, '.cue-cautions'), 'strong').map(textOf);
    expect(said).toEqual(named);
    expect(said).toEqual(['Blades:', 'Hot glue:']);
    expect(text).toMatch(/maker’s instructions.*local rules/u);
  });

  it('lets no markup of a project through', () => {
    const bold = all(one(page, 'body'), 'b');
    expect(bold.map(({ attributes }) => attributes.class)).toEqual(['piece', 'piece', 'piece']);
  });
});

describe('what is said in a step', () => {
  const said = (text: string, most: 1 | 2 | 3 = 3): string[] => {
    const sheet = SHEET.replace('Stamp the anchor on the :piece[label].', text);
    const from = sample(sheet, { 'sample/photos/gun.jpg': 'x' });
    const [, stamping] = all(pageOf(from, { ...(ROOMS[0] as CardRoom), actions: most }), '.cue-step');
    return stamping ? all(stamping, '.cue-actions').flatMap((list) => all(list, 'li').map(textOf)) : [];
  };

  it('is its first sentence, and those with a piece or a number before others', () => {
    const text =
      'Ink it. Hold your breath. Stamp 1/2 in from the *top* of the :piece[label]. Wait.\n\n- Leave :reveal[label].';
    expect(said(text)).toEqual([
      'Ink it.',
      'Stamp 1/2 in from the top of the label.',
      expect.stringMatching(/^Leave /u),
    ]);
    expect(said(text, 1)).toEqual(['Ink it.']);
    expect(said('Ink it. Breathe. Wait. Smile.')).toEqual(['Ink it.', 'Breathe.', 'Wait.']);
  });

  it('has no tip and no picture in it', () => {
    expect(said('Ink it.\n\n:::tip\nSlowly.\n:::\n\n![A](photos/gun.jpg)\n\nWait.')).toEqual([
      'Ink it.',
      'Wait.',
    ]);
  });
});

describe('the notes of the demonstrator', () => {
  it('are on the card and on no sheet', () => {
    const notes = ['Wave to the camera', 'Cut two', 'Hold up', 'Say goodbye'];
    for (const note of notes) expect(text).toContain(note);
    for (const target of ['page', 'letter', 'a4', 'large-print'] as const) {
      const sheet = textOf(one(parseMarkup(sheetHtml(project, target)), 'body'));
      expect(notes.filter((note) => sheet.includes(note))).toEqual([]);
    }
  });
});

describe('a card with too little room', () => {
  it('never sets a type under 16 points', () => {
    for (const room of ROOMS) expect(room.points).toBeGreaterThanOrEqual(16);
    expect(cardOf(project, ROOMS[2])).toContain('font-size: 16pt');
  });

  it('leaves things out in a fixed order, and says each time what', () => {
    const told = less.map((room) => missingIn(project, room));
    const [cautions, instead, table] = [
      'The cautions of single steps are on the sheet.',
      'Substitutes for supplies are on the sheet.',
      'The supplies are on the sheet.',
    ];
    const notes = 'Your own notes did not fit; they are in sample/sheet.md.';
    expect(told).toEqual([
      [],
      [],
      [instead],
      [instead],
      [instead],
      [instead],
      [instead],
      [instead],
      [cautions, instead],
      [cautions, table],
      [cautions, table, notes],
      [cautions, table, notes],
      [cautions, table, notes],
    ]);
    for (const room of less) {
      const shown = textOf(one(pageOf(project, room), 'body'));
      expect(shown.includes('Do not press')).toBe(room.stepCautions);
      expect(shown.includes('the back of a spoon')).toBe(room.table && room.instead);
      expect(shown.includes('Anchor stamp')).toBe(room.table);
      expect(shown.includes('Wave to the camera')).toBe(room.notes);
    }
  });

  it('says how many rows are left out', () => {
    const pieces = Array.from({ length: 20 }, (_, index) => `    p${index}: { cut: 2 x ${index + 1} }`);
    const many = sample(
      `---\ntitle: Many\nmeasurements:\n  unit: in\n  pieces:\n${pieces.join('\n')}\n---\n`,
    );
    expect(textOf(one(pageOf(many, ROOMS.at(-1)), '.cue-left'))).toBe('12 more on the sheet.');
  });

  it('does not speak of leaving out what was never there', () => {
    const bare = sample(
      '---\ntitle: Bare\nmeasurements:\n  unit: in\n  pieces:\n    tag: { cut: 2 x 4 }\n---\nA tag.\n',
    );
    for (const room of ROOMS) expect(missingIn(bare, room)).toEqual([]);
  });
});
