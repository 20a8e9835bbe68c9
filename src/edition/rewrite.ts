import type { Length } from '../measure/length.ts';
import type {
  AtSize,
  FormAsWritten,
  Piece,
  PieceBody,
  Placement,
  Project,
  ScoreGroup,
  Stock,
} from '../project/model.ts';
import type { At } from '../project/source.ts';
import { scorePositions } from './relations.ts';

/** What each length of a project becomes. */
export type Respelling = {
  readonly unit: 'in' | 'mm';
  readonly length: (own: Length) => Length;
  /** A distance from a base's edge. */
  readonly distance: (own: Length) => Length;
  /** A side of a sheet as it is sold: its nominal size, as 8 1/2 in paper is called 216 mm. */
  readonly sheet: (own: Length) => Length;
  /** A score position, by its name among the quantities. */
  readonly position: (name: string, own: Length) => Length;
};

/** The project with every measurement of its pieces in another edition; what it holds stays what it is. */
export function rewriteProject(project: Project, respelling: Respelling): Project {
  const pieces = new Map([...project.pieces].map(([id, piece]) => [id, rewritePiece(piece, respelling)]));
  const stock = new Map([...project.stock].map(([id, each]) => [id, rewriteStock(each, respelling)]));
  return { ...project, unit: respelling.unit, pieces, stock };
}

function rewriteStock(stock: Stock, { sheet }: Respelling): Stock {
  const nominal = ({ value, at }: At<Length>): At<Length> => ({ value: sheet(value), at });
  const sheets = stock.sheets.map(({ size, ...rest }) => ({
    ...rest,
    size: { width: nominal(size.width), height: nominal(size.height), at: size.at },
  }));
  return { ...stock, sheets };
}

/** One piece in another edition. */
export function rewritePiece(piece: Piece, respelling: Respelling): Piece {
  return {
    ...piece,
    body: rewriteBody(piece.id.value, piece.body, respelling),
    placement: rewritePlacement(piece.placement, respelling),
    ...(piece.corners && { corners: rewriteAt(piece.corners, respelling) }),
  };
}

function rewriteBody(id: string, body: PieceBody, respelling: Respelling): PieceBody {
  if (body.kind === 'flat') return { ...body, cut: rewriteSize(body.cut, respelling) };
  if (body.kind === 'net') {
    return {
      ...body,
      cut: rewriteSize(body.cut, respelling),
      score: rewriteScores(id, body.score, respelling),
    };
  }
  const settings = new Map(
    [...body.settings].map(([key, setting]) => [
      key,
      setting.kind === 'lengths'
        ? { ...setting, lengths: setting.lengths.map((length) => rewriteAt(length, respelling)) }
        : setting,
    ]),
  );
  return { ...body, settings, ruler: respelling.unit };
}

function rewriteSize({ width, height, at }: AtSize, respelling: Respelling): AtSize {
  return { width: rewriteAt(width, respelling), height: rewriteAt(height, respelling), at };
}

function rewriteScores(id: string, groups: readonly ScoreGroup[], { position }: Respelling): ScoreGroup[] {
  const moved = scorePositions(id, groups).map(({ name, value }) => position(name, value));
  return groups.map(({ from, at }) => ({
    from,
    at: at.map((line) => ({ value: moved.shift() ?? line.value, at: line.at })),
  }));
}

function rewritePlacement(
  { left, right, top, bottom, turn }: Placement,
  { distance }: Respelling,
): Placement {
  const moved = ({ value, at }: At<Length>): At<Length> => ({ value: distance(value), at });
  return {
    ...(left && { left: moved(left) }),
    ...(right && { right: moved(right) }),
    ...(top && { top: moved(top) }),
    ...(bottom && { bottom: moved(bottom) }),
    ...(turn && { turn }),
  };
}

function rewriteAt({ value, at }: At<Length>, { length }: Respelling): At<Length> {
  return { value: length(value), at };
}

/** The lengths a form was given; counts and choices are the same in every edition. */
export function formLengths({ settings }: FormAsWritten): readonly Length[] {
  return [...settings.values()].flatMap((setting) =>
    setting.kind === 'lengths' ? setting.lengths.map(({ value }) => value) : [],
  );
}
