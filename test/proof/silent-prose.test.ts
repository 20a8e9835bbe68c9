import { describe, expect, it } from 'vitest';
import { sheetWith } from './sheet-with.ts';
import { blamed, findingsOf } from './workspace.ts';

const PIECES = [
  'card: { stock: cream, cut: 8 1/2 x 5 1/2, score: [{ from: left, at: [4 1/4] }], panels: { back: A1, front: B1 } }',
  'mat: { stock: cream, cut: 4 x 5 1/4, on: card.front }',
  'cover: { stock: cream, cut: 3 3/4 x 5, on: mat }',
  'label: { stock: cream, cut: 2 x 3/4, on: cover, at: { bottom: 3/4 }, corners: 1/8 }',
  'tag: { stock: cream, form: tag, size: 1 1/2 x 3 }',
].join('\n');
const HEAD = [
  'minutes: 60',
  'supplies:',
  '  - { item: Bone folder, kind: tool, instead: the back of a spoon }',
  '  - { item: Double-sided tape 1/4 in wide, kind: adhesive }',
  '  - { item: Black dye ink, kind: ink }',
].join('\n');

/** Ordinary sentences, of which none may be blamed: what is said of numbers, tools, colons, links and time. */
const PAGE = `
This card takes an evening: score it, layer it, sign it. We meet at 18:30 in the hall, 10 in the room at most, and the
ratio is 3:2. A smile :smile: for whoever comes. Note:this is the long way round; the quick one is on page 2:3.

## Score the card :step{minutes=10 ahead}
Lay the :piece[card] on the board with a long side along the top. :scores[card] The card is 5 1/2 in high, and folded it is
4 1/4 × 5 1/2 in. Cut it from a sheet of 8 1/2 x 11 in. Fold it in half, then press for 10 minutes. If you have no bone
folder, a spoon will do; without a hot glue gun nothing is lost, and nobody needs a craft knife or a hole punch here.

Work the fold with the bone folder. Fold the 8 in half and keep 2 in each bag.

## Layer :step{minutes=25 dry=2h}
Stick the :piece[mat] to the front of the card, leaving :reveal[mat] all round, 1/8 in on every side. Then take the
:piece[cover]: 1/8 in of the mat shows all round. Run 1/4 in tape along its edges, about 1/8 in from each.

- Stick the :piece[cover] down first.
- Cover the tape with its liner, then turn the mat over; it is 4 in wide and 5 1/4 in high.

Stick the :piece[label] to the cover, 3/4 in up from the bottom. Its corners are rounded to 1/8 in, and it is 2 x 3/4 in.
Cut the :piece[tag] 3 in long, 1 1/2 in wide.

| what | how large |
| --- | --- |
| the mat | 4 x 5 1/4 in |
| the cover | 3 3/4 x 5 in |

## Finish :step{minutes=25}
Ink the stamp with black, like an ink pad that is full. Read [the first step](#step-1), see [the list](../), write to
[us](mailto:bench@example.org) or look at [this photo](https://example.org/a?b=c). Say thank you.

:::host
Have a glue gun, a craft knife and a heat gun ready on your own table.
:::
`;

describe('ordinary prose', () => {
  it('is left in peace', () => {
    const sheet = sheetWith({ head: HEAD, pieces: PIECES, body: PAGE });
    expect(findingsOf(sheet).map((finding) => `${finding.rule}: ${blamed(finding)}`)).toEqual([]);
  });

  it.each([
    ['de', 'Die Karte :piece[card] ist 140 mm hoch und 10,8 cm breit. Ohne Heißklebepistole geht es auch.'],
    ['de', 'Die :piece[card] misst 216 × 140 mm, also 21,6 mal 14 cm. Die 6 in den Umschlag legen.'],
    ['fr', 'La carte :piece[card] mesure 216 sur 140 mm. Pas de pistolet à colle : 14 cm suffisent.'],
    ['nl', 'De kaart :piece[card] is 21,6 bij 14 cm. Leg er 6 in het vakje, zonder lijmpistool.'],
    ['es', 'La tarjeta :piece[card] mide 21,6 por 14 cm. No hace falta cúter.'],
  ])('in %s: %s', (language, text) => {
    const sheet = sheetWith({
      head: `lang: ${language}\nsupplies: [Papier]`,
      unit: 'mm',
      stock: 'cream: { sheet: A4 }',
      pieces:
        'card: { stock: cream, cut: 216 x 140, score: [{ from: left, at: [108] }], panels: { a: A1, b: B1 } }',
      body: `## 1\n${text}\n`,
    });
    expect(findingsOf(sheet).map((finding) => `${finding.rule}: ${blamed(finding)}`)).toEqual([]);
  });
});
