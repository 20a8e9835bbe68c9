import type { ImpressionAsWritten, PunchedEdge } from '../decoration.ts';
import { made, mapOf, type Value } from '../grammar/grammar.ts';
import { flag, listed, needed, optional, required, section } from '../grammar/keys.ts';
import { asChoice, asLength, asSize, asText } from '../grammar/values.ts';
import { EDGES, type Edge } from '../net-as-written.ts';
import { asPlacement, TURN, turnedPlacement } from './read-placement.ts';

const asEdges: Value<readonly Edge[]> = made(asChoice([...EDGES, 'all'] as const), ({ value }) =>
  value === 'all' ? EDGES : [value],
);

const OF_PANEL = optional(asText, 'The panel of a folded piece that it is on: `front`.');

/** One entry of `edge:`. */
export const asPunchedEdge: Value<PunchedEdge> = made(
  mapOf('an edge, such as { along: left, pitch: 1/4, hole: 1/8 }', {
    along: needed(
      listed(asEdges, 'The edge: `left`, `right`, `top` or `bottom`; several in a list, or `all`.'),
    ),
    pitch: required(asLength, 'From one motif to the next, middle to middle, as the tool has it.'),
    hole: required(asLength, 'How much of the edge one motif takes up.'),
    depth: optional(asLength, 'How far in from the edge it cuts. As far as the hole is wide by default.'),
    start: optional(asLength, 'Where the first motif begins, if the tool leaves you no choice.'),
    through: flag('`yes` for a die that runs on past both ends and cuts parts of a motif there.'),
    in: OF_PANEL,
  }),
  ({ along, ...edge }, { node: { at } }) => ({ ...edge, along: [...new Set(along.flat())], at }),
);

/** One entry of `impressions:`. */
export const asImpression: Value<ImpressionAsWritten> = made(
  mapOf('a stamped image, such as { stamp: wheat, size: 2 x 1 }', {
    stamp: required(asText, 'The stamp, by its name among the supplies.'),
    ink: optional(asText, 'The ink, by its name among the supplies.'),
    size: required(asSize, 'How large the image is, width first.'),
    at: section(asPlacement, 'Where on the piece; in the middle by default.'),
    turn: TURN,
    in: OF_PANEL,
    'runs off': flag('`yes` for an image that is meant to run off the paper.'),
    covered: flag('`yes` for one that a layer is meant to lie on.'),
    over: flag('`yes` for one that is meant to be printed over another.'),
  }),
  ({ at, turn, ...impression }, task) => ({
    ...impression,
    placement: turnedPlacement(at, turn, task),
    at: task.node.at,
  }),
);
