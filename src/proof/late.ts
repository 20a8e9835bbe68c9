import type { Project } from '../project/model.ts';
import type { At } from '../project/source.ts';
import type { Stock } from '../project/stock.ts';

/** Whether something can no longer be had on the day of the session. */
export function isSoldOut(until: At<string> | undefined, { session }: Project): until is At<string> {
  return until !== undefined && session !== undefined && until.value < session.value;
}

/** A paper that pieces are cut from and that can no longer be had then, and what takes its place. */
type PaperSoldOut = {
  readonly stock: Stock;
  readonly until: At<string>;
  readonly instead: At<string> | undefined;
  readonly substitute: Stock | undefined;
};

export function* papersSoldOut(project: Project): Generator<PaperSoldOut> {
  const named = new Set([...project.pieces.values()].map((piece) => piece.stock?.value));
  for (const stock of project.stock.values()) {
    const { id, until, instead } = stock;
    if (!named.has(id.value) || !isSoldOut(until, project)) continue;
    yield { stock, until, instead, substitute: instead && project.substitutes.get(instead.value) };
  }
}
