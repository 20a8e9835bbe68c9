import type { Project } from '../../project/model.ts';
import { isSameRef } from '../../project/ref.ts';
import type { Place } from '../../project/source.ts';
import { distanceOutside } from '../../shape/flat-polygon.ts';
import { type Ground, groundOf } from '../../shape/ground.ts';
import type { Layer } from '../../shape/shapes.ts';
import { type OfLayer, ofLayer } from '../axis.ts';
import { firstReference } from '../mentions.ts';
import type { Rule } from '../rule.ts';
import { sayList } from '../words.ts';

type Facts = OfLayer & {
  /** The layers it lies over, each as large as it or smaller, at their names. */
  readonly hidden: readonly { readonly name: string; readonly at: Place }[];
};

export const layerHidden: Rule<Facts> = {
  severity: 'warning',
  summary: 'No layer is completely hidden by another on the same base.',
  why: 'When two layers go on one base and the later one covers all of the earlier, the earlier one cannot be seen. Usually one of them belongs elsewhere, or an `at:` is missing. Layers that partly overlap are fine, and so is a small one on a large one.',
  fails: {
    pieces:
      'card: { stock: cream, cut: 4 x 5 }\nlabel: { stock: cream, cut: 2 x 1, on: card }\nphoto: { stock: cream, cut: 3 x 4, on: card }',
    blames: 'photo',
  },
  passes: { with: 'cut: 2 x 1, on: photo', insteadOf: 'cut: 2 x 1, on: card' },
  *check({ project, shapes }) {
    const laid = besideOthers(shapes.layers).map((layer) => ({ layer, ground: groundOf(layer, shapes) }));
    const found = new Map<Laid, Laid[]>();
    for (const under of laid) {
      const over = laid.findLast((each) => hides(each, under, project));
      if (over) found.set(over, [...(found.get(over) ?? []), under]);
    }
    for (const [{ layer }, under] of found) {
      const hidden = under.map(({ layer: { piece } }) => ({ name: piece.id.value, at: piece.id.at }));
      yield { at: layer.piece.id.at, facts: { ...ofLayer(project, layer), hidden } };
    }
  },
  say: ({ layer, baseName, hidden }) => {
    const names = sayList(hidden.map(({ name }) => name));
    return {
      message: `${layer} lies over the whole of ${names} on ${baseName}: nothing of ${hidden.length > 1 ? 'them' : 'it'} is seen`,
      remedy: `say with "at:" where each goes, or write "on: ${layer}" for what lies on it`,
      notes: hidden.map(({ name, at }) => ({ message: `${name} is hidden`, at })),
    };
  },
};

type Laid = { readonly layer: Layer; readonly ground: Ground };

/** Single layers that lie on their base with others; of several alike only one has its place said. */
function besideOthers(layers: readonly Layer[]): readonly Layer[] {
  const single = layers.filter(({ piece }) => piece.count.value === 1);
  return single.filter((layer) => single.some((other) => other !== layer && isSameRef(other.on, layer.on)));
}

/** Whether one layer is stuck over another on the same base and leaves nothing of it to be seen. */
function hides(over: Laid, under: Laid, project: Project): boolean {
  if (over === under || !isSameRef(over.layer.on, under.layer.on) || !covers(over, under)) return false;
  const [first, second] = [under.layer.piece.id.value, over.layer.piece.id.value];
  const written = [...project.pieces.keys()];
  if (written.indexOf(first) > written.indexOf(second)) return false;
  const [one, other] = [firstReference(first, project), firstReference(second, project)];
  return covers(under, over) || !one || !other || one.of.at.start < other.of.at.start;
}

/** Millimeters that two outlines that should be alike may differ by. */
const ALIKE = 0.1;

function covers(over: Laid, under: Laid): boolean {
  return under.ground.outline.every((point) => distanceOutside(point, over.ground.outline) < ALIKE);
}
