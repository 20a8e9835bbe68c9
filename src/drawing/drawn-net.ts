import type { Edition, Editions } from '../edition/editions.ts';
import type { EditionName } from '../measure/ruler-unit.ts';
import { readRef } from '../project/ref.ts';
import { caliperOf, stockOf } from '../shape/caliper.ts';
import type { Net } from '../shape/net.ts';
import { glueAreas } from '../shape/stacking/glue-areas.ts';
import type { GluedFace } from '../shape/stacking/glued-face.ts';
import { type DrawnNet, netOf } from './style.ts';

/** The net of a piece as it is drawn; undefined when it could not be made in one of the editions. */
export function drawnNetOf(editions: Editions, leading: EditionName, piece: string): DrawnNet | undefined {
  const net = netOf(editions, leading, piece);
  if (!net) return undefined;
  const edition = editions[leading];
  const body = edition.project.pieces.get(readRef(piece).piece)?.body;
  const hasCells = net.drawn.cuts !== undefined || (body?.kind === 'net' && net.drawn.folds.length > 0);
  return { ...net, glued: gluedOn(edition, piece, net.drawn), hasCells };
}

function gluedOn({ project }: Edition, id: string, net: Net): readonly GluedFace[] {
  if (net.glue.length === 0) return [];
  const { thickness } = caliperOf(stockOf(project.pieces.get(readRef(id).piece), project));
  return glueAreas(net, thickness.mm).map(({ from }) => from);
}
