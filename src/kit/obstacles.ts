import { fitsWithin, quarterTurned, type Size } from '../measure/size.ts';
import type { Finding } from '../project/finding.ts';
import type { Piece, Project } from '../project/model.ts';
import { stockOf } from '../shape/caliper.ts';
import type { Shapes } from '../shape/shapes.ts';
import { type CuttingBench, usableSize } from './bench.ts';
import { cutPiecesOf, demandOf, type StockDemand } from './demand.ts';

/** Everything that prevents a kit: what each piece lacks, then what each stock does. */
export function findObstacles(project: Project, shapes: Shapes, bench: CuttingBench): readonly Finding[] {
  return [
    ...[...project.pieces.values()].flatMap((piece) => findLacks(piece, project, shapes)),
    ...demandOf([{ project, shapes, kits: 1 }]).flatMap((demand) => findTooLarge(demand, bench)),
  ];
}

const RULE = 'cannot-be-kitted';

function findLacks(piece: Piece, project: Project, shapes: Shapes): readonly Finding[] {
  const { id, stock } = piece;
  if (!stock) return [{ rule: RULE, at: id.at, facts: { lack: 'stock', piece: id.value } }];
  if (!stockOf(piece, project))
    return [{ rule: RULE, at: stock.at, facts: { lack: 'known stock', stock: stock.value } }];
  if (cutPiecesOf(piece, { shapes, kits: 1 }).length > 0) return [];
  return [{ rule: RULE, at: id.at, facts: { lack: 'size', piece: id.value } }];
}

function findTooLarge({ stock, turnable, kinds }: StockDemand, bench: CuttingBench): readonly Finding[] {
  const { id, sheets } = stock;
  if (sheets.length === 0) return [{ rule: RULE, at: id.at, facts: { lack: 'sheet', stock: id.value } }];
  const fits = (size: Size, sheet: Size): boolean =>
    fitsWithin(size, sheet) || (turnable && fitsWithin(quarterTurned(size), sheet));
  const cut = kinds.flatMap(({ pieces }) => pieces);
  return cut.flatMap(({ name, size }): readonly Finding[] => {
    if (sheets.some((sheet) => fits(size, usableSize(sheet, bench)))) return [];
    const whole = sheets.some(({ size: { width, height } }) =>
      fits(size, { width: width.value, height: height.value }),
    );
    const lack = whole ? 'room once trimmed' : 'room';
    return [{ rule: RULE, at: id.at, facts: { lack, name, stock: id.value } }];
  });
}
