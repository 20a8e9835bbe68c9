import { Length } from '../../measure/length.ts';
import type { Size } from '../../measure/size.ts';
import type { RoundedCorners } from '../../project/corners.ts';
import type { Finding } from '../../project/finding.ts';
import type { Piece, Project } from '../../project/model.ts';
import type { OpeningAsWritten, OpeningCut, PopUpCut } from '../../project/opening.ts';
import { ontoBase, ontoSheet } from '../layer-outline.ts';
import { lieOn } from '../lying.ts';
import { boxSize, type FlatPoint, type Net, type Opening } from '../net.ts';
import { boxCorners, cutCorners } from '../outline.ts';
import { onlyPanel, partUnder, type Under } from '../shapes.ts';
import type { Sheet } from '../sheets.ts';
import { traceOutline } from '../tracing/trace.ts';
import { cutPopUps } from './place-pop-up.ts';

/** The sheets of a piece, with its openings cut in them; and what of these cannot be. */
export function cutOpenings(
  piece: Piece,
  sheets: readonly Sheet[],
  project: Project,
): { readonly sheets: readonly Sheet[]; readonly findings: readonly Finding[] } {
  const popped = cutPopUps(piece, sheets, project.unit);
  const findings: Finding[] = [...popped.findings];
  const cut = new Map<Net, Opening[]>();
  for (const written of piece.openings) {
    const { value: actual, at } = written.name;
    const isTaken = sheets.some(({ net }) => net.panels.some(({ id, name }) => [id, name].includes(actual)));
    const facts = { misfit: 'name of a panel', actual, other: piece.id.value } as const;
    if (isTaken) findings.push({ rule: 'unexpected-value', at, facts });
    if (written.cut.kind === 'pop-up') continue;
    const under = panelFor(written, piece, popped.sheets, findings);
    const opening = under && openingIn(under, { ...written, cut: written.cut }, project, findings);
    if (opening) cut.set(under.net, [...(cut.get(under.net) ?? []), opening]);
  }
  const withOpenings = (net: Net): Net => {
    const openings = cut.get(net);
    return openings ? { ...net, openings } : net;
  };
  return { sheets: popped.sheets.map((sheet) => ({ ...sheet, net: withOpenings(sheet.net) })), findings };
}

/** The panel that an opening is cut in, and its sheet. */
function panelFor(
  { name, in: named, at }: OpeningAsWritten,
  { id: { value: piece } }: Piece,
  sheets: readonly Sheet[],
  findings: Finding[],
): Required<Omit<Under, 'opening'>> | undefined {
  const own = sheets[0]?.net;
  const only = onlyPanel(own);
  if (!own) return undefined;
  if (named) {
    const { net, panel } = partUnder(sheets, named.value) ?? {};
    if (net && panel) return { net, panel };
    const among = sheets.flatMap(({ net: { panels } }) => panels.map(({ id }) => id));
    const facts = { what: 'panel', name: named.value, of: piece, among };
    findings.push({ rule: 'unknown-reference', at: named.at, facts });
    return undefined;
  }
  if (only) return { net: own, panel: only };
  const where = ['pieces', piece, 'openings', name.value];
  findings.push({ rule: 'missing-value', at, facts: { key: 'in', where, isWritten: false } });
  return undefined;
}

/** An opening from its own top left, and how large it is. */
type OpeningPattern = Pick<Opening, 'size' | 'outline' | 'how' | 'shape' | 'corners'>;

/** What is cut out of one panel. */
type CutOut = OpeningAsWritten & { readonly cut: Exclude<OpeningCut, PopUpCut> };

function openingIn(
  { panel }: Required<Omit<Under, 'opening'>>,
  written: CutOut,
  project: Project,
  findings: Finding[],
): Opening | undefined {
  const pattern = patternOf(written, project, findings);
  if (!pattern) return undefined;
  const lying = lieOn(boxSize(panel.box), { size: pattern.size, placement: written.placement });
  const { centered, reveals } = lying;
  const face = { box: panel.box, face: 'outside' } as const;
  const outline = pattern.outline.map((point) => ontoSheet(face, ontoBase(lying, point)));
  return { ...pattern, name: written.name.value, panel: panel.id, outline, margins: reveals, centered };
}

function patternOf({ name, cut }: CutOut, project: Project, findings: Finding[]): OpeningPattern | undefined {
  if (cut.kind === 'slot') {
    const size = { width: cut.length.value, height: Length.zero };
    return { size, outline: [origin, { x: size.width, y: Length.zero }], how: 'slit' };
  }
  const size = { width: cut.size.width.value, height: cut.size.height.value };
  const { corners = [] } = cut;
  if (!cut.outline)
    return { size, outline: roundedBox(size, corners), how: 'cut', ...(corners.length > 0 && { corners }) };
  const traced = traceOutline({ name: name.value, outline: cut.outline, size: cut.size }, project);
  findings.push(...traced.findings);
  if (!traced.traced) return undefined;
  const { points, box, shape } = traced.traced;
  const outline = points.map(({ x, y }) => ({ x: x.minus(box.left), y: y.minus(box.top) }));
  return { size: boxSize(box), outline, how: 'cut', shape };
}

const origin: FlatPoint = { x: Length.zero, y: Length.zero };

function roundedBox({ width, height }: Size, corners: RoundedCorners): readonly FlatPoint[] {
  const box = boxCorners({ left: Length.zero, top: Length.zero, right: width, bottom: height });
  return cutCorners(box, [], { kind: 'round', corners }).outline;
}
