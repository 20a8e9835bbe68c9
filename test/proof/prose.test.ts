import { describe, expect, it } from 'vitest';
import { sheetWith } from './sheet-with.ts';
import { blamed, findingsOf, ofRule } from './workspace.ts';

const PIECES = [
  'card: { stock: cream, cut: 4 1/4 x 5 1/2 }',
  'front: { stock: cream, cut: 4 x 5 1/4, on: card, corners: 1/4 }',
  'label: { stock: cream, cut: 2 x 3/4, on: front, at: { top: 1 1/2 } }',
  'fold: { stock: cream, cut: 8 1/2 x 6, score: [{ from: left, at: [3 5/8] }], panels: { tab: A1 } }',
].join('\n');
const SUPPLIES = 'supplies:\n  - { item: 3/8 in double-sided tape, kind: adhesive }';
const HOLDS = 'holds: { item: seed packet, size: 3 1/4 x 4 1/2 x 1/16, count: 6 }';

describe('prose-measurement', () => {
  const inProse = (text: string): (string | undefined)[] =>
    ofRule('prose-measurement', {
      pieces: PIECES,
      head: SUPPLIES,
      more: HOLDS,
      body: `## Do it\n${text}\n`,
    }).map(blamed);

  it.each<[string, string[]]>([
    ['Cut 4 x 5 1/4 in.', []],
    ['Cut 5 1/4 × 4 in, turned.', []],
    ['It is 4 in wide and 5 1/4 in high.', []],
    ['Leave 1/8 in all round.', []],
    ['Cut :piece[front] to 4 x 5 1/4 in.', []],
    ['Cut :piece[front] at 4 1/4 x 5 1/2 in for the :piece[card].', ['4 1/4 x 5 1/2 in']],
    ['Stick :piece[front] to the 4 1/4 x 5 1/2 in card.', []],
    ['Round the corners, 1/4 in.', []],
    ['Score at 3 5/8 in.', []],
    ['The tab is 3 5/8 x 6 in.', []],
    ['The wide panel is 4 7/8 in.', []],
    ['From a sheet of 8 1/2 x 11 in.', []],
    ['Put the label 1 1/2 in from the top.', []],
    ['Use the 3/8 in tape.', []],
    ['For packets of 3 1/4 × 4 1/2 in.', []],
    ['Use a 12 in trimmer.', []],
    ['That is about 102 × 133 mm.', []],
    ['That is 10.8 cm.', []],
    ['Cut 4 x 5 1/2 in.', ['4 x 5 1/2 in']],
    ['Leave 3/16 in, not 1/8 in.', ['3/16 in']],
    ['Cut **4 3/8 in**, then 4⅜" again.', ['4 3/8 in', '4⅜"']],
    ['That is about 100 mm.', ['100 mm']],
    ['- in a list: 7 in\n\n> in a quote: 9 in', ['7 in', '9 in']],
    [':::host\nCut 9 1/2 in for yourself.\n:::', ['9 1/2 in']],
    ['Fold the 6 in half.', []],
    ['Press for 10 minutes.', []],
  ])('%s', (text, expected) => {
    expect(inProse(text)).toEqual(expected);
  });

  it.each<[string, string[]]>([
    // 1/8 in is the border of front, 1 1/2 in where label lies, 5/8 in what is left of front beside it: 1 in.
    ['Stick :piece[front] to the card, leaving 1/8 in all round.', []],
    ['Stick :piece[front] to the card, leaving 1 in all round.', ['1 in']],
    ['Stick :piece[label] to :piece[front], leaving 1/8 in below.', ['1/8 in']],
    ['Stick :piece[label] to :piece[front], leaving 1 in at the sides.', []],
    ['Stick :piece[label] 1 1/2 in from the top of the front.', []],
    ['Stick the front to the card, leaving 1 in all round.', ['1 in']],
    ['Front and card: 1 in.', []],
    ['Take :piece[label]. Stick the front down, leaving 1 in beside it.', []],
    ['Take :piece[front]. Then leave 1 in.', []],
    ['Cut :piece[front] 4 x 5 1/4 in from a sheet of 8 1/2 x 11 in.', []],
    ['Cut :piece[front] 2 x 3/4 in.', ['2 x 3/4 in']],
    ['Put 3/8 in tape on the back of :piece[front].', []],
    [
      '- :piece[front]: 4 x 5 1/4 in\n- :piece[label]: 4 x 5 1/4 in\n- :piece[fold]: 2 x 3/4 in',
      ['2 x 3/4 in'],
    ],
    ['See ::drawing or 1 in of it.', []],
  ])('looks at what its sentence names: %s', (text, expected) => {
    expect(inProse(text)).toEqual(expected);
  });

  it('says of what a measurement is none', () => {
    const body = '## Do it\nStick :piece[front] to the card, leaving 1 in all round.\n';
    expect(ofRule('prose-measurement', { pieces: PIECES, body })[0]).toMatchObject({
      message: '"1 in" is not a measurement of front or card, which this sentence names',
    });
    const nearer = '## Do it\nStick :piece[label] to the card, leaving 1 3/4 in at the top.\n';
    expect(
      ofRule('prose-measurement', {
        pieces: `${PIECES}\nstrip: { stock: cream, cut: 1 3/4 x 5 }`,
        body: nearer,
      })[0],
    ).toMatchObject({
      message:
        '"1 3/4 in" is not a measurement of label or card, which this sentence names; nearest is 2 in, the width of label',
    });
  });

  it('reads introduction and headings too', () => {
    const body = 'It is 9 in wide.\n\n## Cut 7 in off\nCut.\n';
    expect(ofRule('prose-measurement', { pieces: PIECES, body }).map(blamed)).toEqual(['9 in', '7 in']);
  });

  it.each([
    [
      'Cut 4 1/8 in.',
      'nothing in this project measures "4 1/8 in"; nearest is 4 1/4 in, the width of card',
      'write :size[card], which follows by itself, or put the number right',
    ],
    [
      'Leave 3/16 in.',
      'nothing in this project measures "3/16 in"; nearest is 1/8 in, a reveal of front on card',
      'write :reveal[front], which follows by itself, or put the number right',
    ],
    [
      'Cut 4 × 5 in.',
      'nothing in this project measures "4 × 5 in"; nearest is 4 × 5 1/4 in, the size of front',
      'write :size[front], which follows by itself, or put the number right',
    ],
    ['Cut 30 in.', 'nothing in this project measures "30 in"', 'put the number right, or say it without one'],
  ])('%s', (text, message, remedy) => {
    const [finding] = ofRule('prose-measurement', { pieces: PIECES, body: `## Do it\n${text}\n` });
    expect(finding).toMatchObject({ severity: 'warning', message, remedy });
  });

  it('keeps still while a piece cannot be read, since its numbers are unknown', () => {
    const body = '## Do it\nCut :piece[card] 4 1/8 in wide.\n';
    expect(
      findingsOf(sheetWith({ pieces: 'card: { stock: cream, cut: 4 1/0 x 5 }', body })).map(
        ({ rule }) => rule,
      ),
    ).toEqual(['unreadable-length']);
  });
});

describe('references', () => {
  const named = (rule: string, text: string): string[] =>
    ofRule(rule, { pieces: PIECES, body: `## Do it\n${text}\n` }).map(
      (finding) => `${blamed(finding)}: ${finding.message}; ${finding.remedy}`,
    );

  it.each<[string, string[]]>([
    [':piece[card] and :size[fold.tab] and ::drawing', []],
    [':piece[crad]', ['crad: there is no piece "crad"; write "card"']],
    [':size[fold.tap]', ['tap: fold has no panel "tap"; write "tab"']],
    [':size[fold.tab]', []],
    ['::drawing{of=frontt view=flat}', ['frontt: there is no piece "frontt"; write "front"']],
  ])('%s', (text, expected) => {
    expect(named('unknown-reference', text)).toEqual(expected);
  });

  it.each<[string, string[]]>([
    [':reveal[front] :scores[fold]', []],
    [
      ':reveal[card]',
      [
        'card: card is not layered on anything, so it has no reveal; name the layer, or say with "on:" what card is on',
      ],
    ],
    [
      ':scores[card]',
      [
        'card: card has no score lines, so :scores has nothing to print; name a piece that is scored, or give card its "score:"',
      ],
    ],
    [
      ':count[fold.tab]',
      [
        'fold.tab: fold.tab is a panel of fold, and :count is said of a whole piece; name a piece, such as :count[fold]',
      ],
    ],
    [
      ':trims[fold]',
      [
        'fold: fold has nothing to cut once it is scored, so :trims has nothing to print; name a piece that has, or give fold its "trim:" or "slit:"',
      ],
    ],
    [
      ':assembly[fold]',
      [
        'fold: fold has nothing that is stuck to itself, so :assembly has nothing to print; name a piece that has, or give fold its "glue:"',
      ],
    ],
  ])('%s', (text, expected) => {
    expect(named('hollow-reference', text)).toEqual(expected);
  });

  it.each<[string, string[]]>([
    ['::drawing{of=card} and ::drawing', []],
    ['::drawing{of=fold view=folded}', []],
    [
      '::drawing{of=fold view=fold-9}',
      ['fold-9: a drawing of fold has no view "fold-9"; write view=flat, view=folded or view=fold-1'],
    ],
    [
      '::drawing{of=card view="fold up"}',
      ['fold up: a drawing of card has no view "fold up"; write view=flat or view=layers'],
    ],
    [
      '::drawing{of=fold.tab}',
      ['fold.tab: nothing lies on fold.tab, so there is nothing to draw; draw the whole piece: of=fold'],
    ],
    ['::drawing{of=crad view=fold-9}', []],
  ])('%s', (text, expected) => {
    expect(named('no-such-view', text)).toEqual(expected);
  });

  it.each<[string, string[]]>([
    ['Take :piece[card], :size[front], ::drawing and :count[label], and :scores[fold].', []],
    ['Take :piece[card].', ['front', 'label', 'fold']],
    ['Take :piece[card], :piece[front], :piece[label], :size[fold.tab].', []],
    ['Take :piece[card], :piece[fornt], :piece[label], :piece[fold].', []],
    ['::drawing{of=card}\n\n::drawing{of=fold view=flat}', ['front', 'label']],
  ])('piece-unused: %s', (text, expected) => {
    expect(ofRule('piece-unused', { pieces: PIECES, body: `## Do it\n${text}\n` }).map(blamed)).toEqual(
      expected,
    );
  });

  it('does not count the introduction as a step, nor ask for use where there are no steps', () => {
    const body = 'About :piece[card].\n';
    expect(
      ofRule('piece-unused', {
        pieces: 'card: { stock: cream, cut: 3 x 4 }',
        body: `${body}\n## Do it\nNow.\n`,
      }),
    ).toHaveLength(1);
    expect(ofRule('piece-unused', { pieces: 'card: { stock: cream, cut: 3 x 4 }', body })).toEqual([]);
  });
});

describe('missing-disclosure', () => {
  it.each<[string, boolean]>([
    ['https://example.org/tape', false],
    ['https://example.org/tape?color=tag', false],
    ['https://example.org/tag/paper', false],
    ['https://example.org/tape?ref=bench', true],
    ['https://example.org/tape?x=1&affiliate_id=7', true],
    ['https://example.org/tape?AFF=7', true],
    ['https://example.org/ref/bench/tape', true],
  ])('%s', (link, isPaid) => {
    const supply = ofRule('missing-disclosure', { head: `supplies:\n  - { item: Tape, link: "${link}" }` });
    const inText = ofRule('missing-disclosure', { body: `## Buy\nBuy [this](${link}).\n` });
    expect(supply.map(blamed)).toEqual(isPaid ? [link] : []);
    expect(inText.map(blamed)).toEqual(isPaid ? [`[this](${link})`] : []);
  });
});

describe('picture-alternative', () => {
  it.each<[string, boolean]>([
    ['The card, folded', true],
    ['Photo of the card, folded', true],
    ['', false],
    ['photo', false],
    ['IMG_2041', false],
    ['cut.jpg', false],
  ])('%j', (alternative, passes) => {
    const body = `## Cut\n![${alternative}](photos/cut.jpg)\n`;
    const found = ofRule('picture-alternative', { body }, { 'card/photos/cut.jpg': 'x' });
    expect(found.map(blamed)).toEqual(passes ? [] : ['photos/cut.jpg']);
  });
});
