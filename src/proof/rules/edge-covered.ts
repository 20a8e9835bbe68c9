import type { Length } from '../../measure/length.ts';
import { roundFolded } from '../../measure/round.ts';
import { rulerUnit } from '../../measure/ruler-unit.ts';
import { type Edge, isUpright } from '../../project/net-as-written.ts';
import { partOver } from '../../shape/ground.ts';
import { stripOf } from '../../shape/punched-strip.ts';
import { layersOver, type OnPaper, rowsIn, sayEdge } from '../decoration.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../words.ts';

type Facts = OnPaper & {
  readonly side: Edge;
  readonly layer: string;
  readonly depth: Length;
  /** How much of that the layer lies over. */
  readonly covered: Length;
};

export const edgeCovered: Rule<Facts> = {
  severity: 'warning',
  summary: 'No layer lies over the motifs of a punched edge.',
  why: 'What is stuck over the holes closes them: its paper shows where you should see through. The border beside a punched edge must be as wide as the motifs are deep.',
  fails: {
    pieces:
      'mat: { stock: cream, cut: 3 x 4, edge: { along: left, pitch: 1/4, hole: 1/8, depth: 1/2 } }\nphoto: { stock: cream, cut: 2 1/2 x 3 1/2, on: mat }',
    blames: '1/2',
  },
  passes: { with: 'cut: 2 x 3, on: mat', insteadOf: 'cut: 2 1/2 x 3 1/2, on: mat' },
  ownEditionOnly: true,
  *check(context) {
    const told = new Set<string>();
    for (const { it, net, facts } of rowsIn(context)) {
      const { side, depth, written, count } = it;
      const strip = stripOf(it);
      for (const [layer, outline] of count > 0 ? layersOver(net, context) : []) {
        const over = partOver(outline, strip);
        const id = layer.piece.id.value;
        // The other sides of the same entry are mended with this one.
        const key = `${written.at.start} ${id}`;
        if (!over || told.has(key)) continue;
        told.add(key);
        const mm = isUpright(side) ? over.width : over.height;
        const covered = roundFolded(mm, rulerUnit(facts.unit));
        const at = (written.depth ?? written.hole).at;
        yield { at, facts: { ...facts, side, layer: id, depth, covered } };
      }
    }
  },
  say: ({ on, unit, side, layer, depth, covered }) => ({
    message: `the motifs along ${sayEdge(side, on)} reach ${sayLength(depth, unit)} into the paper, and ${layer} covers ${sayLength(covered, unit)} of that`,
    remedy: `leave ${sayLength(depth, unit)} free there: cut ${layer} smaller or move it; or correct "depth:"`,
  }),
};
