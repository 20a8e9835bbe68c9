import type { Piece } from '../../project/model.ts';
import { everyProse } from '../../project/prose/prose.ts';
import type { Reference, ReferenceKind } from '../../project/prose/reference.ts';
import { writeRef } from '../../project/ref.ts';
import type { Shapes } from '../../shape/shapes.ts';
import { netNamed, sheetsNamed } from '../../shape/sheets.ts';
import { isThere } from '../part-names.ts';
import type { Rule } from '../rule.ts';

type Facts = {
  readonly kind: ReferenceKind;
  /** What was named, and the piece that it is or is of. */
  readonly name: string;
  readonly piece: string;
  readonly lack: Lack;
  /** A form has its lines and cuts by itself: no key gives it others. */
  readonly isForm: boolean;
};

export const hollowReference: Rule<Facts> = {
  severity: 'error',
  summary: 'A step asks only for things the piece has.',
  why: 'A piece that is on nothing has no reveal, and one without score lines has nothing to score. The sentence would have a hole in it.',
  fails: {
    pieces: 'card: { stock: cream, cut: 4 x 5 }\nfront: { stock: cream, cut: 3 x 4, on: card }',
    body: '## Layer\nStick :piece[front] on :piece[card], leaving :reveal[card] all round.\n',
    blames: 'card',
  },
  passes: { with: ':reveal[front]', insteadOf: ':reveal[card]' },
  ownEditionOnly: true,
  *check({ project, shapes }) {
    for (const reference of everyProse(project).flatMap(({ references }) => references)) {
      const { kind, of } = reference;
      const piece = project.pieces.get(of.value.piece);
      const lack = piece && isThere(shapes, of.value) && lackOf(reference, piece, shapes);
      if (!piece || !lack) continue;
      const isForm = piece.body.kind === 'form';
      yield { at: of.at, facts: { kind, name: writeRef(of.value), piece: of.value.piece, lack, isForm } };
    }
  },
  say: ({ kind, name, piece, lack, isForm }) => {
    if (lack === 'sheet' || lack === 'panel') {
      return {
        message: `${name} is a ${lack} of ${piece}, and :${kind} is said of a whole piece`,
        remedy: `name a piece, such as :${kind}[${piece}]`,
      };
    }
    if (lack === 'base') {
      return {
        message: `${piece} is not layered on anything, so it has no reveal`,
        remedy: `name the layer, or say with "on:" what ${piece} is on`,
      };
    }
    const { none, other, key } = LACKS[lack];
    const isGiven = !isForm || lack === 'edge' || lack === 'impressions';
    return {
      message: `${name} has ${none}, so :${kind} has nothing to print`,
      remedy: `name a piece that ${other}, or ${isGiven ? `give ${piece} its ${key}` : 'leave it out'}`,
    };
  },
};

/** What there would have to be: a whole piece instead of the sheet or panel named, a base, or something to do. */
type Lack = 'sheet' | 'panel' | 'base' | keyof typeof LACKS;

const LACKS = {
  scores: { none: 'no score lines', other: 'is scored', key: '"score:"' },
  trims: { none: 'nothing to cut once it is scored', other: 'has', key: '"trim:" or "slit:"' },
  assembly: { none: 'nothing that is stuck to itself', other: 'has', key: '"glue:"' },
  edge: { none: 'no punched edge', other: 'has', key: '"edge:"' },
  impressions: { none: 'nothing stamped on it', other: 'has', key: '"impressions:"' },
};

/** What may be said of a panel (`box.front`) as well, and of a further sheet (`box.lid`). */
const OF_PANELS: ReadonlySet<ReferenceKind> = new Set(['piece', 'size', 'drawing']);
const OF_SHEETS: ReadonlySet<ReferenceKind> = new Set([...OF_PANELS, 'scores', 'trims', 'assembly']);

/** What a piece would need to have something said of it that it hasn't. */
function lackOf({ kind, of }: Reference, piece: Piece, { nets }: Shapes): Lack | undefined {
  const name = writeRef(of.value);
  const { id, on, body } = piece;
  const isSheet = sheetsNamed(nets, of.value).length > 0;
  if (name !== id.value && !(isSheet ? OF_SHEETS : OF_PANELS).has(kind)) {
    return isSheet ? 'sheet' : 'panel';
  }
  if (kind === 'reveal') return on ? undefined : 'base';
  if (kind === 'edge' || kind === 'impressions') return piece[kind].length > 0 ? undefined : kind;
  const sheets = sheetsNamed(nets, of.value).map(({ net }) => net);
  const isScored = (netNamed(nets, of.value)?.scores.length ?? 0) > 0;
  const isCut = sheets.some(({ folds, waste, slits }) => folds.length > 0 && waste.length + slits.length > 0);
  const isStuck = body.kind === 'form' || sheets.some(({ glue }) => glue.length > 0);
  if (kind === 'scores') return isScored ? undefined : kind;
  if (kind === 'trims') return isCut ? undefined : kind;
  return kind === 'assembly' && !isStuck ? kind : undefined;
}
