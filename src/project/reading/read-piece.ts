import type { FormGrammar } from '../grammar/form-grammar.ts';
import {
  choiceSchema,
  type Keys,
  made,
  mapOf,
  type ReadMap,
  type Schema,
  turned,
  type Value,
} from '../grammar/grammar.ts';
import { atMost, flag, listed, named, optional, section, usually } from '../grammar/keys.ts';
import type { OutlineGrammar } from '../grammar/outline-grammar.ts';
import { type Catalog, type Reader, reportDotted } from '../grammar/reader.ts';
import { asChoice, asCount, asMatch, asText } from '../grammar/values.ts';
import type { Piece, PieceBody } from '../model.ts';
import { isSlipOf } from '../nearest.ts';
import type { At } from '../source.ts';
import { entriesOf, entryOf, isByName, type YamlEntry, type YamlNode } from '../yaml/yaml-node.ts';
import { asBase, baseOf } from './read-base.ts';
import { asCorners } from './read-corners.ts';
import { asImpression, asPunchedEdge } from './read-decoration.ts';
import { asDrawn, drawnBody } from './read-drawn.ts';
import { asOpening } from './read-openings.ts';
import { outlineKeys } from './read-outline.ts';
import { asFormName, choosesOne, flatOrNet, formNamed, settingsOf } from './read-piece-body.ts';
import { asPlacement, TURN, turnedPlacement } from './read-placement.ts';
import { sharing, USE } from './shared.ts';

/** A piece as written. Its body is missing where its size, net or form has a finding. */
export type WrittenPiece = Omit<Piece, 'body'> & { readonly body: PieceBody | undefined };

const asPieceName: Value<At<string>> = asMatch(
  'the name of a piece, such as card',
  /^.+$/su,
  ([name]) => name,
);
const OPENINGS = 'openings by name, such as { window: { size: 2 x 3 } }';

const COMMON = {
  use: optional(asText, USE),
  name: optional(asText, 'What it is called on paper. Without it, the short name is used.'),
  stock: optional(asText, 'The short name of the paper it is cut from.'),
  on: optional(
    asBase,
    'What it is stuck on: a piece, or a panel of one, as in `box.front`. `inside card.front` is its other face.',
  ),
  behind: optional(
    asBase,
    'What it is stuck behind instead: a flat piece, or an opening such as `card.window`.',
  ),
  at: section(asPlacement, 'Where on it; in the middle by default.'),
  turn: TURN,
  overhang: flag('`yes` for a layer that is meant to pass the edge of its base.'),
  corners: optional(asCorners, 'The radius of its rounded corners, or of some of them: `{ top: 1/4 }`.'),
  edge: listed(asPunchedEdge, 'An edge for a border punch or an edge die, or a list of edges.'),
  impressions: listed(asImpression, 'The images that are stamped on it.'),
  count: usually(asCount(1, 1000), '1', 'How many of it one project takes.'),
  holds: listed(
    asPieceName,
    'The piece that goes into this envelope, box, bag or pocket; or a list of those that go in together.',
  ),
  around: listed(
    asPieceName,
    'The piece that this band or sleeve goes around; or a list of those that it holds together.',
  ),
  openings: atMost(
    200,
    named(asOpening, OPENINGS, 'What is cut out of it: windows and slots, each under a short name.'),
  ),
} satisfies Keys;

const FORM = 'a piece, such as { cut: 3 x 4 }';

const FORM_NAME = optional(asFormName, 'The name of a ready-made form.');

/** A piece that is no form: flat, with an outline of its own maybe, or a net. */
function unformed(outlines: readonly OutlineGrammar[]): ReturnType<typeof formed> {
  const whole = mapOf(FORM, { ...COMMON, body: flatOrNet, outlined: outlineKeys(outlines) });
  return made(whole, ({ body, outlined, ...piece }, { reader }) => {
    const outline = outlined?.outline;
    if (!body || !outlined || !outline) return { ...piece, ...(body && outlined && { body }) };
    const { shape } = outline;
    const misfit = body.kind === 'flat' ? piece.corners && 'corners of a shape' : 'shape of a net';
    if (!misfit) return { ...piece, body: { ...body, outline } };
    const facts = { misfit, actual: shape.value } as const;
    reader.report({ rule: 'unexpected-value', at: piece.corners?.[0]?.radius.at ?? shape.at, facts });
    return piece;
  });
}

/** A piece whose form isn't there: its own keys are read all the same, and nothing is said of others. */
const FORMLESS = made(mapOf(FORM, { ...COMMON, form: FORM_NAME }, true), ({ form: _, ...piece }) => piece);

/** A flat piece by its drawing, which gives its size. */
const DRAWN = made(
  mapOf(FORM, {
    ...COMMON,
    drawn: optional(asDrawn, "An outline of your own instead: an SVG file in the project's folder."),
  }),
  ({ drawn, ...piece }, { reader }) => {
    const [rounding] = piece.corners ?? [];
    if (!drawn || !rounding) return { ...piece, ...(drawn && { body: drawnBody(drawn) }) };
    const facts = { misfit: 'corners of a shape', actual: 'drawing of your own' } as const;
    reader.report({ rule: 'unexpected-value', at: rounding.radius.at, facts });
    return piece;
  },
);

/** A piece of a ready-made form. */
function formed(form: FormGrammar): Value<ReadMap<typeof COMMON> & { readonly body?: PieceBody }> {
  const whole = mapOf(FORM, { settings: settingsOf(form), ...COMMON, form: FORM_NAME });
  return made(whole, ({ settings, form: name, ...piece }, task) => {
    const isWhole = choosesOne(form, task) && settings && name;
    return isWhole ? { ...piece, body: { kind: 'form', form: name, ...settings } } : piece;
  });
}

/** One entry of `pieces:`. */
export const asPiece: Value<WrittenPiece> = sharing(
  'pieces',
  made(
    turned({ $ref: '#/$defs/piece' }, ({ node, reader }) => ({ value: mapOfPiece(node, reader) })),
    // Behind `around:` of a band its size may stand, which its form reads.
    ({ body, at, turn, on, behind, openings, around = [], ...piece }, task) => {
      const { node, spot, reader } = task;
      reportDotted(spot.key, spot.at, reader);
      return {
        ...piece,
        around,
        ...baseOf(on, behind, node, reader),
        id: { value: spot.key, at: spot.at },
        body,
        placement: turnedPlacement(at, turn, task),
        openings: openings.values.map(({ name, value }) => ({ ...value, name })),
        at: node.at,
      };
    },
  ),
);

function mapOfPiece(node: YamlNode, reader: Reader): ReturnType<typeof formed> {
  const name = (entryOf(node, 'form') ?? misspeltForm(node, reader))?.value;
  if (!name && entryOf(node, 'drawn')) return DRAWN;
  if (!name) return unformed(reader.outlines);
  const form = formNamed(name, reader);
  return form ? formed(isByName(entryOf(node, 'around')) ? withoutAround(form) : form) : FORMLESS;
}

/** What follows a slip of `form:` and is the name of one. */
function misspeltForm(node: YamlNode, reader: Reader): YamlEntry | undefined {
  return entriesOf(node).find(({ key, value }) => isSlipOf(key.text, 'form') && formNamed(value, reader));
}

/** A band whose `around:` names a piece and is no size: then another of its settings has to say how large it is. */
function withoutAround({ oneOf = [], parameters, ...form }: FormGrammar): FormGrammar {
  const [other, ...more] = oneOf.filter((key) => key !== 'around');
  const left = parameters.filter(({ key }) => key !== 'around');
  const sure = left.map((each) =>
    each.key === other && more.length === 0 ? { ...each, required: true } : each,
  );
  return { ...form, parameters: sure };
}

/** The schema of a piece: of its form if it names one, else of a flat piece or a net; what is shared may be either. */
export function pieceSchema({ forms, outlines }: Catalog): Schema {
  const written = unformed(outlines).schema;
  const flat = written.properties;
  const own = ({ properties = {}, anyOf = [{}] }: Schema): Schema => ({
    properties: Object.fromEntries(Object.entries(properties).filter(([key]) => !flat?.[key])),
    propertyNames: { enum: Object.keys(properties) },
    anyOf,
  });
  const names = asChoice(forms.map(({ name }) => name)).schema;
  const ofForms = forms.reduceRight<Schema>((others, form) => {
    const isThis = { properties: { form: asChoice([form.name]).schema } };
    return choiceSchema(isThis, own(formed(form).schema), others);
  }, {});
  const drawnOrNot = choiceSchema({ required: ['drawn'] }, own(DRAWN.schema), own(written));
  const formedOrNot = choiceSchema({ required: ['form'] }, ofForms, drawnOrNot);
  return {
    type: 'object',
    properties: {
      ...flat,
      ...DRAWN.schema.properties,
      form: { ...names, description: flat?.form?.description },
    },
    ...choiceSchema({ required: ['use'] }, {}, formedOrNot),
  };
}
