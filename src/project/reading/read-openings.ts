import type { Length } from '../../measure/length.ts';
import type { RoundedCorners } from '../corners.ts';
import {
  choiceSchema,
  type Keys,
  made,
  mapOf,
  type Schema,
  type ToRead,
  turned,
  type Value,
  whereOf,
} from '../grammar/grammar.ts';
import { listed, optional, section } from '../grammar/keys.ts';
import type { OutlineGrammar } from '../grammar/outline-grammar.ts';
import { reportDotted, reportMissing } from '../grammar/reader.ts';
import { asLength, asSize, asText } from '../grammar/values.ts';
import type { OpeningAsWritten, OpeningCut } from '../opening.ts';
import type { AtSize } from '../sizes-as-written.ts';
import type { At } from '../source.ts';
import { entryOf } from '../yaml/yaml-node.ts';
import { asCorners } from './read-corners.ts';
import { asDrawn, drawnSize } from './read-drawn.ts';
import { outlineKeys, type WrittenOutline } from './read-outline.ts';
import { asPlacement, TURN, turnedPlacement } from './read-placement.ts';
import { asAcross, popUpOf, reportStrays } from './read-pop-up.ts';

type NamelessOpening = Omit<OpeningAsWritten, 'name'>;

const FORM = 'an opening, such as { size: 2 x 3, in: front }';

const WHERE = {
  in: optional(asText, 'The panel that it is cut in. A flat piece needs none.'),
  at: section(asPlacement, 'Where in it; in the middle by default.'),
  turn: TURN,
} satisfies Keys;

/** An opening by its drawing, which gives its size. */
const DRAWN = made(
  mapOf(FORM, { drawn: optional(asDrawn, 'An outline of your own instead, as for a piece.'), ...WHERE }),
  ({ drawn, at, turn, in: panel }, task): NamelessOpening | undefined => {
    if (!drawn) return undefined;
    const placement = turnedPlacement(at, turn, task);
    const cut = { kind: 'window', size: drawnSize(drawn), outline: drawn } as const;
    return { cut, placement, at: task.node.at, ...(panel && { in: panel }) };
  },
);

/** An entry of `openings:`; without a size there is none. */
export const asOpening: Value<NamelessOpening> = turned(
  { $ref: '#/$defs/opening' },
  ({ node, spot, reader }) => {
    reportDotted(spot.key, spot.at, reader);
    return { value: entryOf(node, 'drawn') ? DRAWN : openingOf(reader.outlines) };
  },
);

/** The schema of an entry of `openings:`. */
export function openingSchema(outlines: readonly OutlineGrammar[]): Schema {
  const written = openingOf(outlines).schema;
  const own = ({ properties = {} }: Schema): Schema => ({
    propertyNames: { enum: Object.keys(properties) },
  });
  return {
    type: 'object',
    properties: { ...written.properties, ...DRAWN.schema.properties },
    ...choiceSchema({ required: ['drawn'] }, own(DRAWN.schema), own(written)),
  };
}

function openingOf(outlines: readonly OutlineGrammar[]): Value<NamelessOpening> {
  const whole = mapOf(FORM, {
    size: optional(asSize, 'How large it is, width first. What is inside falls out.'),
    slot: optional(asLength, 'The length of a slot instead: one straight cut, for a tab to go through.'),
    'pop-up': optional(
      asLength,
      'The width of a pop-up instead: a strip between two slits across a fold, which comes forward when the fold is opened.',
    ),
    depth: listed(
      asLength,
      'Of a pop-up: how far its slits run into the panels on either side of the fold. Two numbers, if they differ, as in `[1, 1 1/2]`, in the order of `across:`.',
    ),
    across: optional(
      asAcross,
      'Of a pop-up: the panels on either side of its fold, as in `back|front`. Where there is but one fold, nothing need be said.',
    ),
    outlined: outlineKeys(outlines),
    corners: optional(
      asCorners,
      'The radius that the corners of a rectangle are rounded by, or some of them: `{ top: 1/4 }`.',
    ),
    ...WHERE,
  });
  return made(whole, (read, task): NamelessOpening | undefined => {
    const { outlined, corners, at, turn, in: panel } = read;
    const cut = cutOf(read, task);
    if (!cut || !outlined) return undefined;
    reportStrays(cut.kind, task);
    const shaped = cut.kind === 'window' ? { ...cut, ...contourOf(outlined, corners, task) } : cut;
    const placement = turnedPlacement(at, turn, task);
    return { cut: shaped, placement, at: task.node.at, ...(panel && { in: panel }) };
  });
}

/** What is round about a window: its outline, or its corners. */
function contourOf(
  { outline }: WrittenOutline,
  corners: RoundedCorners | undefined,
  { reader }: ToRead,
): WrittenOutline & { readonly corners?: RoundedCorners } {
  const [rounding] = corners ?? [];
  if (!outline || !rounding) return { ...(outline && { outline }), ...(corners && { corners }) };
  const facts = { misfit: 'corners of a shape', actual: outline.shape.value } as const;
  reader.report({ rule: 'unexpected-value', at: rounding.radius.at, facts });
  return { outline };
}

type Cuts = {
  readonly size?: AtSize;
  readonly slot?: At<Length>;
  readonly 'pop-up'?: At<Length>;
  readonly depth: readonly At<Length>[];
  readonly across?: At<readonly [string, string]>;
};

/** What is cut; there must be the size of one, the length of another or the width of a third. */
function cutOf({ size, slot, depth, across, ...read }: Cuts, task: ToRead): OpeningCut | undefined {
  const { node, spot, reader } = task;
  const width = read['pop-up'];
  const [first, second] = ['size', 'slot', 'pop-up'].flatMap((key) => entryOf(node, key)?.key ?? []);
  if (first && second) {
    const facts = { misfit: 'one too many', actual: second.text, other: first.text } as const;
    reader.report({ rule: 'unexpected-value', at: second.at, facts });
  }
  if (!first) reportMissing({ key: 'size', where: whereOf(spot), isWritten: false }, spot.at, reader);
  if (size) return { kind: 'window', size };
  if (slot) return { kind: 'slot', length: slot };
  return width && popUpOf(width, depth, across, task);
}
