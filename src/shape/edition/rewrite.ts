import type { Length } from '../../measure/length.ts';
import { type Part, parseLength, parseSizes } from '../../measure/notation.ts';
import { printDecimal, printInches } from '../../measure/print.ts';
import type {
  AtSize,
  Edge,
  FormSetting,
  Piece,
  PieceBody,
  Placement,
  Project,
  ScoreGroup,
} from '../../project/model.ts';
import type { At } from '../../project/source.ts';
import { forms } from '../forms/index.ts';

/** What each length of a project becomes. */
export type Respelling = {
  readonly unit: 'in' | 'mm';
  readonly length: (own: Length) => Length;
  readonly position: (piece: string, from: Edge, own: Length) => Length;
};

/** The project with every measurement of its pieces in another edition; papers and what it holds stay what they are. */
export function rewriteProject(project: Project, respelling: Respelling): Project {
  const pieces = new Map(
    [...project.pieces].map(([id, piece]) => [id, rewritePiece(piece, project, respelling)]),
  );
  return { ...project, unit: respelling.unit, pieces };
}

/** One piece in another edition. */
export function rewritePiece(piece: Piece, { unit }: Project, respelling: Respelling): Piece {
  return {
    ...piece,
    body: rewriteBody(piece.id.value, piece.body, unit, respelling),
    placement: rewritePlacement(piece.placement, respelling),
    ...(piece.corners && { corners: rewriteAt(piece.corners, respelling) }),
  };
}

function rewriteBody(id: string, body: PieceBody, unit: Project['unit'], respelling: Respelling): PieceBody {
  if (body.kind === 'flat') return { ...body, cut: rewriteSize(body.cut, respelling) };
  if (body.kind === 'net') {
    const score = body.score.map((group) => rewriteScores(id, group, respelling));
    return { ...body, cut: rewriteSize(body.cut, respelling), score };
  }
  const settings = new Map(body.settings);
  for (const { key, setting, lengths } of formLengths(body, unit)) {
    const value = lengths.map((own) => spelled(respelling.length(own), respelling.unit)).join(' x ');
    settings.set(key, { ...setting, text: { ...setting.text, value } });
  }
  return { ...body, settings };
}

function rewriteSize({ width, height, at }: AtSize, respelling: Respelling): AtSize {
  return { width: rewriteAt(width, respelling), height: rewriteAt(height, respelling), at };
}

function rewriteScores(id: string, { from, at }: ScoreGroup, { position }: Respelling): ScoreGroup {
  return {
    from,
    at: at.map((line) => ({ value: position(id, from.value, line.value), at: line.at })),
  };
}

function rewritePlacement(placement: Placement, respelling: Respelling): Placement {
  const { left, right, top, bottom, turn } = placement;
  return {
    ...(left && { left: rewriteAt(left, respelling) }),
    ...(right && { right: rewriteAt(right, respelling) }),
    ...(top && { top: rewriteAt(top, respelling) }),
    ...(bottom && { bottom: rewriteAt(bottom, respelling) }),
    ...(turn && { turn }),
  };
}

function rewriteAt({ value, at }: At<Length>, { length }: Respelling): At<Length> {
  return { value: length(value), at };
}

type FormBody = Extract<PieceBody, { kind: 'form' }>;

/** A setting of a form that is one or several lengths, as read. */
export type FormLengths = {
  readonly key: string;
  readonly setting: FormSetting;
  readonly lengths: readonly Length[];
};

/** The settings of a form that are lengths; counts and choices are the same in every edition. */
export function formLengths({ form, settings }: FormBody, unit: Project['unit']): readonly FormLengths[] {
  const known = forms.find(({ name }) => name === form.value.trim().toLowerCase());
  return (known?.parameters ?? []).flatMap(({ key, kind }) => {
    const setting = settings.get(key);
    if (!setting || kind === 'count' || kind === 'choice') return [];
    return [{ key, setting, lengths: settingParts(setting.text.value, unit).map(({ length }) => length) }];
  });
}

function settingParts(text: string, unit: Project['unit']): readonly Pick<Part, 'length'>[] {
  const one = parseLength(text, unit);
  if (one.ok) return [{ length: one.value }];
  for (const count of [2, 3] as const) {
    const several = parseSizes(text, unit, count);
    if (several.ok) return several.value;
  }
  return [];
}

/** A length as a person would write it into a setting, exactly: an edition's numbers all lie on its ruler. */
function spelled(length: Length, unit: 'in' | 'mm'): string {
  return unit === 'in' ? `${printInches(length, 'plain')} in` : `${printDecimal(length, 'mm', 1)} mm`;
}
