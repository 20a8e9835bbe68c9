import { type Editions, pairs, type Twin, twin } from '../edition/editions.ts';
import { EDGES, type Edge } from '../project/net-as-written.ts';
import { readRef } from '../project/ref.ts';
import { measuresOf, type Net, type Opening, type PopUp } from '../shape/net.ts';
import type { Layer } from '../shape/shapes.ts';
import { netNamed } from '../shape/sheets.ts';
import type { Measures } from './measures.ts';
import { baseName, partNamed } from './names.ts';
import { saidOpening } from './outlines.ts';
import { html, SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

/** What is cut out of a sheet (`box`, `box.lid`), an opening a sentence: `cut out the window, 2 × 3 in, …`. */
export function openingNotes(
  editions: Editions,
  id: string,
  measures: Measures,
  voice: Voice,
): readonly SafeHtml[] {
  const nets = twin(editions, ({ shapes }) => netNamed(shapes.nets, readRef(id)));
  if (!nets) return [];
  const openings = pairs({ inch: nets.inch.openings ?? [], metric: nets.metric.openings ?? [] });
  const popUps = pairs({ inch: nets.inch.popUps ?? [], metric: nets.metric.popUps ?? [] });
  const cut = openings.map((opening) => {
    const { how, name } = opening.inch;
    const shape = shapeWords(opening, measures, voice);
    const values = {
      name: partNamed(name, voice.say),
      size: sizeWords(opening, measures),
      shape: shape ?? '',
      place: placeWords(opening, nets.inch, measures, voice),
    };
    return voice.phrase(`opening-${how}${how === 'cut' && shape ? '-shaped' : ''}`, values);
  });
  return [...cut, ...popUps.map((popUp) => popUpNote(popUp, measures, voice))];
}

/** `for the step, cut two slits across the fold with a craft knife: 2 in apart, 1 in deep on either side, …`. */
function popUpNote({ inch, metric }: Twin<PopUp>, measures: Measures, voice: Voice): SafeHtml {
  const [depth, other] = pairs({ inch: inch.depths, metric: metric.depths });
  const said = (length: Twin | undefined): SafeHtml => measures.both(length ? [length] : []);
  const isEqual = inch.depths[0].equals(inch.depths[1]);
  return voice.phrase(isEqual ? 'opening-pop-up' : 'opening-pop-up-unequal', {
    name: partNamed(inch.name, voice.say),
    width: said({ inch: inch.width, metric: metric.width }),
    depth: said(depth),
    other: said(other),
    panel: partNamed(inch.panels[0], voice.say),
    far: partNamed(inch.panels[1], voice.say),
    place: popUpPlace({ inch, metric }, measures, voice),
  });
}

/** Where it lies on its fold, from the nearer end. */
function popUpPlace({ inch, metric }: Twin<PopUp>, measures: Measures, voice: Voice): SafeHtml {
  if (inch.isCentered) return html`${voice.say('opening-centered')}`;
  const end = inch.ends[1].lessThan(inch.ends[0]) ? 1 : 0;
  const side = (inch.isUpright ? (['top', 'bottom'] as const) : (['left', 'right'] as const))[end];
  const size = measures.both([{ inch: inch.ends[end], metric: metric.ends[end] }]);
  return voice.phrase('opening-from', { size, side: voice.say(`opening-${side}`) });
}

/** `arch with a round top ½ in (13 mm) high`; nothing of a rectangle. */
function shapeWords(opening: Twin<Opening>, measures: Measures, voice: Voice): SafeHtml | undefined {
  const said = saidOpening(opening, (length) => measures.both([length]));
  if (said.length === 0) return undefined;
  return SafeHtml.join(
    said.map(({ key, values }) => voice.phrase(key, values)),
    ', ',
  );
}

function sizeWords({ inch, metric }: Twin<Opening>, measures: Measures): SafeHtml {
  return measures.both(pairs({ inch: measuresOf(inch), metric: measuresOf(metric) }));
}

/** `½ in (13 mm) from the top, centered across`, and on which panel. */
function placeWords(
  opening: Twin<Opening>,
  net: Net | undefined,
  measures: Measures,
  voice: Voice,
): SafeHtml {
  const place = withinWords(opening, measures, voice);
  const { panel } = opening.inch;
  if (!net || net.panels.length <= 1) return place;
  return voice.phrase('opening-panel', { place, panel: partNamed(panel, voice.say) });
}

function withinWords(opening: Twin<Opening>, measures: Measures, voice: Voice): SafeHtml {
  const { margins, centered } = opening.inch;
  if (centered.across && centered.upright) return html`${voice.say('opening-centered')}`;
  const sides = [
    ...(centered.across ? [] : [nearer(margins, 'left', 'right')]),
    ...(centered.upright ? [] : [nearer(margins, 'top', 'bottom')]),
  ];
  const distances = sides.map((side) => {
    const size = { inch: opening.inch.margins[side], metric: opening.metric.margins[side] };
    return voice.phrase('opening-from', { size: measures.both([size]), side: voice.say(`opening-${side}`) });
  });
  const middle = centered.across ? ['opening-across'] : centered.upright ? ['opening-upright'] : [];
  return voice.list([...distances, ...middle.map((key) => voice.say(key))]);
}

function nearer(margins: Opening['margins'], one: Edge, other: Edge): Edge {
  return margins[other].lessThan(margins[one]) ? other : one;
}

/** `behind the window of the card, reaching ¼ in (6 mm) past it`; undefined of what is behind no opening. */
export function behindWords(layer: Twin<Layer>, measures: Measures, voice: Voice): SafeHtml | undefined {
  const past = twinOf(layer);
  if (!past) return undefined;
  const opening = baseName({ ...layer.inch.on, face: 'outside' }, voice);
  return voice.phrase('behind-opening', { opening, size: measures.both([past]) });
}

/** How far a layer reaches past the opening that it is behind, where that is least. */
function twinOf({ inch, metric }: Twin<Layer>): Twin | undefined {
  const [first, ...others] = EDGES.flatMap((side) => {
    const [one, other] = [pastOpening(inch, side), pastOpening(metric, side)];
    return one && other ? [{ inch: one, metric: other }] : [];
  });
  return others.reduce((least, each) => (least && each.inch.lessThan(least.inch) ? each : least), first);
}

const MIRRORED = { left: 'right', right: 'left', top: 'top', bottom: 'bottom' } as const;

function pastOpening({ under: { opening }, reveals }: Layer, side: Edge): Layer['reveals'][Edge] | undefined {
  return opening?.margins[MIRRORED[side]].minus(reveals[side]);
}
