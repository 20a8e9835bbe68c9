/**
 * Checks a cutting plan by geometry alone, from the JSON another program would read: it knows nothing of how plans are
 * made. Lengths are the millimeters written there; a fiftieth of one is nobody's business at a trimmer.
 */

type Figures = { readonly in: string; readonly mm: number };
type Box = { readonly x: Figures; readonly y: Figures; readonly width: Figures; readonly height: Figures };
type Cut = {
  readonly step: number;
  readonly part: Box;
  readonly from: string;
  readonly setting: Figures;
  readonly length: Figures;
};
export type JsonLayout = {
  readonly sheet: { readonly width: Figures; readonly height: Figures };
  readonly count: number;
  readonly placements: readonly (Box & { readonly piece: string; readonly turned: boolean })[];
  readonly cuts: readonly Cut[];
};
export type JsonStock = {
  readonly stock: string;
  readonly total: number;
  readonly bound: number;
  readonly proven: boolean;
  readonly seconds: number;
  readonly layouts: readonly JsonLayout[];
};

/** What was asked for: each piece's size and how many, whether it may be turned, and what sheets there are. */
export type Asked = {
  readonly pieces: ReadonlyMap<
    string,
    { readonly width: number; readonly height: number; readonly count: number; readonly turnable: boolean }
  >;
  readonly sheets: readonly { readonly width: number; readonly height: number }[];
  readonly kerf: number;
};

type Rectangle = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

const NEAR = 0.02;

/** Everything that is wrong with a plan of one stock; nothing when it can be cut as it says. */
export function wrongWith(plan: JsonStock, asked: Asked): readonly string[] {
  const sheets = plan.layouts.reduce((sum, { count }) => sum + count, 0);
  return [
    ...(sheets === plan.total ? [] : [`${sheets} sheets are cut, ${plan.total} counted`]),
    ...(plan.bound <= plan.total ? [] : [`a bound of ${plan.bound} over ${plan.total}`]),
    ...plan.layouts.flatMap((layout, index) =>
      wrongWithLayout(layout, asked).map((problem) => `layout ${index + 1}: ${problem}`),
    ),
    ...wrongCounts(plan, asked),
  ];
}

function wrongCounts({ layouts }: JsonStock, { pieces }: Asked): string[] {
  const cut = new Map<string, number>();
  for (const { placements, count } of layouts)
    for (const { piece } of placements) cut.set(piece, (cut.get(piece) ?? 0) + count);
  const strange = [...cut.keys()].filter((piece) => !pieces.has(piece));
  return [
    ...strange.map((piece) => `nobody asked for ${piece}`),
    ...[...pieces].flatMap(([piece, { count }]) =>
      cut.get(piece) === count ? [] : [`${cut.get(piece) ?? 0} of ${piece}, not ${count}`],
    ),
  ];
}

function wrongWithLayout(layout: JsonLayout, asked: Asked): string[] {
  const { sheet, count, placements } = layout;
  const [width, height] = [sheet.width.mm, sheet.height.mm];
  const placed = placements.map(rectangleOf);
  const problems: string[] = [];
  if (!Number.isInteger(count) || count < 1) problems.push(`${count} sheets`);
  if (!asked.sheets.some((each) => near(each.width, width) && near(each.height, height)))
    problems.push(`there is no sheet of ${width} × ${height}`);
  placements.forEach((placement, index) => {
    problems.push(...wrongSize(placement, asked));
    const box = placed[index];
    if (
      box &&
      (box.left < -NEAR || box.top < -NEAR || box.right > width + NEAR || box.bottom > height + NEAR)
    )
      problems.push(`${placement.piece} passes the sheet's edge`);
    placed.slice(index + 1).forEach((other, later) => {
      if (box && overlap(box, other))
        problems.push(`${placement.piece} overlaps ${placements[index + 1 + later]?.piece}`);
    });
  });
  const left = cutUp(layout, asked.kerf, problems);
  for (const [index, box] of placed.entries())
    if (!left.some((part) => same(part, box))) problems.push(`${placements[index]?.piece} is not cut out`);
  return problems;
}

function wrongSize(
  { piece, width, height, turned }: JsonLayout['placements'][number],
  { pieces }: Asked,
): string[] {
  const wanted = pieces.get(piece);
  if (!wanted) return [];
  const [across, down] = turned ? [wanted.height, wanted.width] : [wanted.width, wanted.height];
  return [
    ...(near(width.mm, across) && near(height.mm, down) ? [] : [`${piece} is ${width.mm} × ${height.mm}`]),
    ...(turned && !wanted.turnable ? [`${piece} may not be turned`] : []),
  ];
}

/** Cuts the sheet up as the plan says, and gives all the parts there are at the end. */
function cutUp({ sheet, cuts }: JsonLayout, kerf: number, problems: string[]): Rectangle[] {
  let parts: Rectangle[] = [{ left: 0, top: 0, right: sheet.width.mm, bottom: sheet.height.mm }];
  let step = 1;
  for (const [index, cut] of cuts.entries()) {
    const box = rectangleOf(cut.part);
    const whole = parts.find((part) => same(part, box));
    if (!whole) {
      problems.push(`cut ${index + 1} is made in a part that is not there`);
      continue;
    }
    if (cut.step !== step && cut.step !== step + 1) problems.push(`step ${cut.step} follows ${step}`);
    step = cut.step;
    const sideways = cut.from === 'left';
    const room = sideways ? whole.right - whole.left : whole.bottom - whole.top;
    const across = sideways ? whole.bottom - whole.top : whole.right - whole.left;
    if (cut.setting.mm <= 0 || cut.setting.mm >= room) problems.push(`cut ${index + 1} is outside`);
    if (!near(cut.length.mm, across)) problems.push(`cut ${index + 1} is not from edge to edge`);
    const beyond = cut.setting.mm + kerf;
    const [near1, far1] = sideways
      ? [
          { ...whole, right: whole.left + cut.setting.mm },
          { ...whole, left: whole.left + beyond },
        ]
      : [
          { ...whole, bottom: whole.top + cut.setting.mm },
          { ...whole, top: whole.top + beyond },
        ];
    parts = [...parts.filter((part) => part !== whole), near1, far1];
  }
  return parts;
}

function rectangleOf({ x, y, width, height }: Box): Rectangle {
  return { left: x.mm, top: y.mm, right: x.mm + width.mm, bottom: y.mm + height.mm };
}

function overlap(a: Rectangle, b: Rectangle): boolean {
  return (
    a.left < b.right - NEAR && b.left < a.right - NEAR && a.top < b.bottom - NEAR && b.top < a.bottom - NEAR
  );
}

function same(a: Rectangle, b: Rectangle): boolean {
  return near(a.left, b.left) && near(a.top, b.top) && near(a.right, b.right) && near(a.bottom, b.bottom);
}

function near(a: number, b: number): boolean {
  return Math.abs(a - b) < NEAR;
}
