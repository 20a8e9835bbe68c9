import type { Panel } from '../../shape/net.ts';
import { ownNet } from '../../shape/sheets.ts';
import type { OfPiece } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';

type Facts = Pick<OfPiece, 'piece'> & { readonly panel: string };

export const taperDoesNothing: Rule<Facts> = {
  severity: 'note',
  summary: 'A tapered flap has free corners to cut.',
  why: 'A taper takes off the corners of a flap, so that it slips in. A panel joined to others on all sides has none, and nothing is cut: another flap was meant, or a slit is missing.',
  fails: {
    pieces: `card:
  stock: cream
  cut: 4 x 6
  score: [{ from: top, at: [1, 5] }]
  folds: { 1|2: mountain 180, 2|3: mountain 180 }
  taper: [A1, A2]`,
    blames: 'A2',
  },
  passes: { with: '[A1]', insteadOf: '[A1, A2]' },
  ownEditionOnly: true,
  *check({ project, shapes }) {
    for (const { id, body } of project.pieces.values()) {
      const net = body.kind === 'net' ? ownNet(shapes.nets, id.value) : undefined;
      if (body.kind !== 'net' || !net) continue;
      for (const { value, at } of body.taper) {
        const panel = net.panels.find((each) => each.id === value || each.id === value.toUpperCase());
        if (panel && isWhole(panel)) yield { at, facts: { piece: id.value, panel: panel.id } };
      }
    }
  },
  say: ({ piece, panel }) => ({
    message: `${piece}.${panel} has no free corner, so its taper cuts nothing`,
    remedy: `take ${panel} out of "taper:", or slit the lines beside it`,
  }),
};

/** Whether nothing is cut off a panel's corners. */
function isWhole({ outline, box }: Panel): boolean {
  return outline.every(
    ({ x, y }) => (x.equals(box.left) || x.equals(box.right)) && (y.equals(box.top) || y.equals(box.bottom)),
  );
}
