import { type Editions, pairs, type Twin, twin } from '../edition/editions.ts';
import { EDGES } from '../project/net-as-written.ts';
import type { EdgeRow, Impression, Panel } from '../shape/net.ts';
import { endsOf } from '../shape/punched-row.ts';
import { sheetsOf } from '../shape/sheets.ts';
import type { Measures } from './measures.ts';
import { partNamed } from './names.ts';
import { SafeHtml } from './safe-html.ts';
import type { Voice } from './voice.ts';

/** A row of motifs as both editions have it. */
type RowTwin = Twin<EdgeRow>;

/** What is punched along the edges of a piece: a phrase for each row, one for several edges that come out alike. */
export function edgeWords(
  editions: Editions,
  id: string,
  measures: Measures,
  voice: Voice,
): readonly SafeHtml[] {
  const rows = twin(editions, ({ shapes }) => sheetsOf(shapes.nets, id).flatMap(({ net }) => net.rows ?? []));
  return alikeRows(rows ? pairs(rows) : []).flatMap((group) => {
    const [first] = group;
    if (!first) return [];
    const edges = voice.list(group.map(({ inch: { side } }) => voice.say(`edge-${side}`)));
    const row = alikeWords(first, measures, voice);
    const { panel } = first.inch;
    return panel
      ? voice.phrase('edge-punched-panel', { edges, row, panel: panelNamed(panel, voice) })
      : voice.phrase('edge-punched', { edges, row });
  });
}

/** Rows of one entry that come out alike, together. */
function alikeRows(rows: readonly RowTwin[]): readonly (readonly RowTwin[])[] {
  const groups = new Map<string, RowTwin[]>();
  for (const row of rows) {
    const { written, panel, count, ends } = row.inch;
    const key = [written.at.start, panel?.id, count, ...ends].join(' ');
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()];
}

/** A row in the lengths of both editions; where another number of motifs goes into each, one edition after the other. */
function alikeWords(row: RowTwin, measures: Measures, voice: Voice): SafeHtml {
  const { inch, metric } = row;
  if (inch.count === metric.count && inch.middle === metric.middle && endsOf(inch) === endsOf(metric))
    return rowWords(row, inch, (length) => measures.both([length]), voice);
  const each = measures.shown.map((edition) =>
    rowWords(row, row[edition], (length) => measures.alone([length], edition), voice),
  );
  return SafeHtml.join(each, ' / ');
}

function rowWords(
  { inch, metric }: RowTwin,
  row: EdgeRow,
  print: (length: Twin) => SafeHtml,
  voice: Voice,
): SafeHtml {
  const motifs = voice.count('edge-motifs', row.count);
  const kind = endsOf(row);
  const lengths = {
    start: print({ inch: inch.ends[0].abs(), metric: metric.ends[0].abs() }),
    end: print({ inch: inch.ends[1].abs(), metric: metric.ends[1].abs() }),
  };
  const isCut = row.ends.some(({ sign }) => sign < 0);
  if (kind === 'unlike')
    return voice.phrase(isCut ? 'edge-cut-unlike' : 'edge-unlike', { ...lengths, motifs });
  const middle = row.middle ? voice.say(`edge-middle-${row.middle}`, { motifs }) : motifs;
  return voice.phrase(`edge-${kind}`, { ...lengths, motifs: middle });
}

function panelNamed({ name, id }: Panel, { say }: Voice): string {
  return partNamed(name ?? id, say);
}

/** What is stamped on a piece, a phrase for each image: which and where. */
export function impressionWords(
  editions: Editions,
  id: string,
  measures: Measures,
  voice: Voice,
): readonly SafeHtml[] {
  const all = twin(editions, ({ shapes }) =>
    sheetsOf(shapes.nets, id).flatMap(({ net }) => net.impressions ?? []),
  );
  return (all ? pairs(all) : []).map((impression) => {
    const { stamp, ink } = impression.inch;
    const image = ink === undefined ? stamp : voice.say('stamped-ink', { stamp, ink });
    return voice.phrase('stamped', { image, place: placeWords(impression, measures, voice) });
  });
}

/** How large it is, the distances that were given, how it lies where none was, and the edges that it runs off. */
function placeWords({ inch, metric }: Twin<Impression>, { both }: Measures, voice: Voice): SafeHtml {
  const { written, panel, centered, turn, reveals } = inch;
  const { left, right, top, bottom } = written.placement;
  const given = { left, right: left ? undefined : right, top, bottom: top ? undefined : bottom };
  const off = EDGES.filter((side) => reveals[side].sign < 0).map((side) => voice.say(`edge-${side}`));
  const middle = centered.across ? (centered.upright ? 'middle' : 'across') : centered.upright && 'upright';
  const size = (['width', 'height'] as const).map((side) => ({
    inch: inch.size[side],
    metric: metric.size[side],
  }));
  const places = [
    both(size),
    ...(panel ? [voice.phrase('stamped-on-panel', { panel: panelNamed(panel, voice) })] : []),
    ...EDGES.filter((side) => given[side] && reveals[side].sign >= 0).map((side) => {
      const length = both([{ inch: reveals[side], metric: metric.reveals[side] }]);
      return voice.phrase(`stamped-from-${side}`, { length });
    }),
    ...(middle ? [voice.phrase(`stamped-${middle}`, {})] : []),
    ...(turn === 0 ? [] : [turnWords(turn, voice)]),
    ...(off.length > 0 ? [voice.phrase('stamped-off', { edges: voice.list(off) })] : []),
  ];
  return SafeHtml.join(places, ', ');
}

/** The shorter way round: nobody turns anything by 340°. */
export function turnWords(degrees: number, voice: Voice): SafeHtml {
  return degrees <= 180
    ? voice.phrase('turned-clockwise', { degrees })
    : voice.phrase('turned-counterclockwise', { degrees: 360 - degrees });
}
