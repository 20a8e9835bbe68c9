import { Length } from '../../measure/length.ts';
import type { BaseReference, Piece } from '../../project/model.ts';
import type { FlatPoint, Net } from '../net.ts';
import { boxCorners } from '../outline.ts';
import type { Layer, Shapes } from '../shapes.ts';
import { quarterTurn } from '../turning.ts';

/** A layer where it lies on a panel: its outline in the coordinates of the panel's own sheet. */
export type PanelLayer = {
  readonly panel: string;
  readonly piece: Piece;
  readonly outline: readonly FlatPoint[];
};

/**
 * Every layer that lies on a panel of a piece, directly or on another layer, in the order they are stuck on. Layers on
 * a folded piece as a whole lie on no one panel and are left out. Where a layer or its base is turned by anything but
 * quarter turns, its points are rounded to 1/1000 mm.
 */
export function layersOnPanels(shapes: Shapes, piece: string): readonly PanelLayer[] {
  const placer = new LayerPlacer(shapes, piece);
  return shapes.layers.flatMap((layer) => {
    const spot = placer.spotOf(layer);
    return spot
      ? [{ panel: spot.panel, piece: layer.piece, outline: outlineOf(layer, shapes).map(spot.carry) }]
      : [];
  });
}

/** A panel, and the way from a layer's own coordinates to those of the panel's sheet. */
type PanelSpot = { readonly panel: string; readonly carry: (point: FlatPoint) => FlatPoint };

class LayerPlacer {
  readonly #shapes: Shapes;
  readonly #piece: string;

  constructor(shapes: Shapes, piece: string) {
    this.#shapes = shapes;
    this.#piece = piece;
  }

  spotOf(layer: Layer): PanelSpot | undefined {
    const base = layer.piece.on?.value;
    const under = base && this.#baseSpot(base);
    return under && { panel: under.panel, carry: (point) => under.carry(ontoBase(layer, point)) };
  }

  #baseSpot({ piece, panel }: BaseReference): PanelSpot | undefined {
    if (piece !== this.#piece) {
      const layer = this.#shapes.layers.find((each) => each.piece.id.value === piece);
      return layer && this.spotOf(layer);
    }
    const nets = [...this.#shapes.nets].filter(([id]) => id === piece || id.startsWith(`${piece}.`));
    const panels = nets.flatMap(([, net]) => (panel === undefined ? onlyPanel(net) : net.panels));
    const found = panels.find(({ id }) => panel === undefined || id === panel || id === panel.toUpperCase());
    return (
      found && {
        panel: found.id,
        carry: ({ x, y }) => ({ x: x.plus(found.box.left), y: y.plus(found.box.top) }),
      }
    );
  }
}

function onlyPanel({ panels }: Net): Net['panels'] {
  return panels.length === 1 ? panels : [];
}

function outlineOf(layer: Layer, { nets }: Shapes): readonly FlatPoint[] {
  const net = nets.get(layer.piece.id.value);
  const [panel] = net ? onlyPanel(net) : [];
  const { width, height } = layer.size;
  return panel?.outline ?? boxCorners({ left: Length.zero, top: Length.zero, right: width, bottom: height });
}

/** A point of a layer, from the layer's own top left, on its base. */
function ontoBase({ left, top, size, turn }: Layer, { x, y }: FlatPoint): FlatPoint {
  if (turn === 0) return { x: x.plus(left), y: y.plus(top) };
  const [halfWidth, halfHeight] = [size.width.half(), size.height.half()];
  const { x: across, y: down } = turnedBy(turn, { x: x.minus(halfWidth), y: y.minus(halfHeight) });
  return { x: across.plus(left).plus(halfWidth), y: down.plus(top).plus(halfHeight) };
}

function turnedBy(degrees: number, { x, y }: FlatPoint): FlatPoint {
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) return quarterTurn({ x, y }, quarters);
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return { x: nearest(x.mm * cos - y.mm * sin), y: nearest(x.mm * sin + y.mm * cos) };
}

function nearest(mm: number): Length {
  return Length.of(Math.round(mm * 1000), 1000, 'mm');
}
