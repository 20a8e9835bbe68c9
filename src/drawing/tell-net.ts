import { pairs, type Twin } from '../edition/editions.ts';
import { boxSize, depthsOf, measuresOf, type Net } from '../shape/net.ts';
import { partNamed } from '../words/names.ts';
import { saidOpening } from '../words/outlines.ts';
import { capital } from '../words/typographic.ts';
import { tellDecoration } from './decoration.ts';
import { scaleName } from './scales.ts';
import { type DrawingStyle, type DrawnNet, type InBoth, scoreRows } from './style.ts';
import { caption, listed, spokenLengths, spokenSize } from './words.ts';

/** A net in words: size, score positions by edge, panels, what is cut away, what is glued; no scale where it has none. */
export function describeNet(
  id: string,
  net: DrawnNet,
  reduction: number | undefined,
  style: DrawingStyle,
): string {
  const { say } = style;
  const whole = {
    name: caption(id, say),
    size: spokenSize({ inch: net.inch.size, metric: net.metric.size }, style),
  };
  const sentences = [
    reduction === undefined
      ? say('drawing-flat', whole)
      : say('drawing-template', { ...whole, scale: scaleName(reduction) }),
    ...scoreRows(net).flatMap(({ from, at, isCut }) =>
      isCut ? [] : say(`drawing-tells-scores-${from}`, { positions: spokenLengths(at, style) }),
    ),
    ...tellPanels(net, style),
  ];
  if (net.drawn.waste.length > 0)
    sentences.push(say('drawing-tells-waste', { count: net.drawn.waste.length }));
  if (net.drawn.slits.length > 0)
    sentences.push(say('drawing-tells-slits', { count: net.drawn.slits.length }));
  sentences.push(...tellOpenings(net, style), ...tellPopUps(net, style));
  sentences.push(...tellGlue(net, style));
  const decoration = tellDecoration(net.drawn, style).map((each) => `${capital(each)}.`);
  return [...sentences, ...decoration].join(' ');
}

function tellGlue({ drawn, glued }: DrawnNet, { say }: DrawingStyle): string[] {
  return (['outside', 'inside'] as const).flatMap((face) => {
    const ids = new Set(glued.filter((each) => each.face === face).map(({ panel }) => panel));
    const named = drawn.panels
      .filter(({ id }) => ids.has(id))
      .map(({ id, name }) => partNamed(name ?? id, say));
    return named.length === 0 ? [] : [say(`drawing-tells-glue-${face}`, { panels: listed(named, say) })];
  });
}

function tellOpenings({ inch, metric, drawn }: InBoth<Net>, style: DrawingStyle): string[] {
  return (drawn.openings ?? []).flatMap(({ name, how }, index) => {
    const [first, second] = [inch.openings?.[index], metric.openings?.[index]];
    if (!first || !second) return [];
    const measures = pairs({ inch: measuresOf(first), metric: measuresOf(second) });
    const size =
      measures.length === 1
        ? spokenLengths(measures, style)
        : spokenSize({ inch: first.size, metric: second.size }, style);
    const spoken = (length: Twin): string => spokenLengths([length], style);
    const outline = how === 'cut' ? saidOpening({ inch: first, metric: second }, spoken) : [];
    const called = [partNamed(name, style.say), ...outline.map(({ key, values }) => style.say(key, values))];
    return [style.say(`drawing-opening-${how}`, { name: called.join(', '), size })];
  });
}

function tellPopUps({ inch, metric, drawn }: InBoth<Net>, style: DrawingStyle): string[] {
  return (drawn.popUps ?? []).flatMap(({ name }, index) => {
    const [first, second] = [inch.popUps?.[index], metric.popUps?.[index]];
    if (!first || !second) return [];
    const width = spokenLengths([{ inch: first.width, metric: second.width }], style);
    const depths = spokenLengths(pairs({ inch: depthsOf(first), metric: depthsOf(second) }), style);
    return [style.say('drawing-opening-pop-up', { name: partNamed(name, style.say), width, depths })];
  });
}

function tellPanels({ inch, metric, drawn }: InBoth<Net>, style: DrawingStyle): string[] {
  return drawn.panels.flatMap(({ name }, index) => {
    const [first, second] = [inch.panels[index], metric.panels[index]];
    if (name === undefined || drawn.panels.length === 1 || !first || !second) return [];
    const size = spokenSize({ inch: boxSize(first.box), metric: boxSize(second.box) }, style);
    return [style.say('drawing-tells-panel', { name: capital(partNamed(name, style.say)), size })];
  });
}
