import { Length } from '../measure/length.ts';
import { roundHalfAway } from '../measure/print.ts';
import type { Project } from '../project/model.ts';
import { buildShapes } from '../shape/build.ts';
import { readGrid } from '../shape/explicit.ts';
import type { Shapes } from '../shape/shapes.ts';
import type { Editions } from './editions.ts';
import { derivedOf, relateForm, type Trial } from './form-relations.ts';
import type { LargeSolver } from './large.ts';
import { Quantities, type Quantity, type Strictness } from './quantities.ts';
import { type Bases, relateFlat, relateLayer, relateNet, relatePlacement } from './relations.ts';
import { rewriteProject } from './rewrite.ts';
import { nearestWholeNumbers } from './whole-numbers.ts';

/** One line of the table of an edition: a number as written and what it became. */
export type Respelled = { readonly names: readonly string[]; readonly own: Length; readonly edition: Length };

/** Both editions of a project, and how the one that was worked out differs from plain conversion. */
export type WorkedOut = {
  readonly editions: Editions;
  readonly table: readonly Respelled[];
  /** The farthest any number lies from what it was. */
  readonly deviation: Length;
  /** Whether every number lies within 1 mm; if not, `strained` names those that don't. */
  readonly within: boolean;
  readonly strained: readonly Respelled[];
};

/** No number of an edition should lie farther off; where that cannot be, it is said, and a farther one is taken. */
const REACH: Length = Length.of(1, 1, 'mm');
/** What is tried in turn: as much as possible kept equal within reach, then less, then farther off. */
const RUNGS: readonly { readonly strictness: Strictness; readonly reach: Length }[] = [
  { strictness: 'all', reach: REACH },
  { strictness: 'reveals apart', reach: REACH },
  { strictness: 'half reveals', reach: REACH },
  { strictness: 'half reveals', reach: Length.of(3, 1, 'mm') },
  { strictness: 'half reveals', reach: Length.of(10, 1, 'mm') },
];
/** A form's rounded allowances may differ between where it was tried and where the search ends. */
const TRIES = 4;

/**
 * Both editions of a project: the one as written, and the other re-dimensioned in whole millimetres (or half ones,
 * or sixteenths of an inch for a project written in metric) so that it still folds square. `large` takes over where the search would be long.
 */
export function workOutEditions(project: Project, shapes: Shapes, large?: LargeSolver): WorkedOut {
  const known = workedOut.get(shapes);
  if (known) return known;
  const result = workOut(project, shapes, large);
  workedOut.set(shapes, result);
  return result;
}

/** Asked for by rules, pages and prints alike, and worked out once. */
const workedOut = new WeakMap<Shapes, WorkedOut>();

function workOut(project: Project, shapes: Shapes, large: LargeSolver | undefined): WorkedOut {
  const unit = project.unit === 'in' ? 'mm' : 'in';
  const step = stepOf(project);
  let at = (own: Length): Length => nearest(own, step);
  let outcome = attempt(project, shapes, { step, unit, at }, large);
  for (let tries = 1; tries < TRIES && !outcome.asPredicted; tries += 1) {
    at = outcome.length;
    outcome = attempt(project, shapes, { step, unit, at }, large);
  }
  return outcome.workedOut;
}

type Outcome = {
  readonly workedOut: WorkedOut;
  /** Whether the forms, made anew, came out as the relations said. */
  readonly asPredicted: boolean;
  readonly length: (own: Length) => Length;
};

function attempt(project: Project, shapes: Shapes, trial: Trial, large: LargeSolver | undefined): Outcome {
  const { quantities, found } = solve(project, shapes, trial, large);
  const look = (own: Length, kind: 'length' | 'reveal'): Length => {
    const quantity = quantities.find(own, kind);
    return (quantity === undefined ? undefined : found[quantity]) ?? nearest(own, trial.step);
  };
  const length = (own: Length): Length => look(own, 'length');
  const named = new Map(
    quantities.all.flatMap(({ names }, index) => names.map((name) => [name, found[index]] as const)),
  );
  const other = rewriteProject(project, {
    unit: trial.unit,
    length,
    distance: (own) => look(own, 'reveal'),
    sheet: (own) => nearest(own, trial.step),
    position: (name, own) => named.get(name) ?? length(own),
  });
  const otherShapes = buildShapes(other);
  const asPredicted = [...other.pieces.values()].every((piece) =>
    derivedOf(otherShapes.nets, piece).every(({ name, value }) => named.get(name)?.equals(value) ?? true),
  );
  const ownEdition = { project, shapes };
  const otherEdition = { project: other, shapes: otherShapes };
  const table = quantities.all.map((quantity, index) => respelled(quantity, found[index]));
  return {
    asPredicted,
    length,
    workedOut: {
      editions:
        trial.unit === 'mm'
          ? { own: 'inch', inch: ownEdition, metric: otherEdition }
          : { own: 'metric', inch: otherEdition, metric: ownEdition },
      ...judged(table),
    },
  };
}

function relate(project: Project, shapes: Shapes, trial: Trial, strictness: Strictness): Quantities {
  const quantities = new Quantities(trial.step, strictness);
  const bases: Bases = new Map();
  for (const piece of project.pieces.values()) {
    relatePlacement(piece, quantities);
    relateFlat(piece, quantities, bases);
    const net = shapes.nets.get(piece.id.value);
    if (piece.body.kind === 'net' && net) {
      const { grid } = readGrid(piece, piece.body, project.unit);
      relateNet(piece, { grid, panels: net.panels }, quantities, bases);
    }
    relateForm(piece, project, shapes.nets, trial, quantities, bases);
  }
  for (const layer of shapes.layers) relateLayer(layer, quantities, bases);
  keepWithinSheets(project, quantities, bases, trial.step);
  return quantities;
}

/** What could be cut from a sheet of its stock still can. */
function keepWithinSheets(project: Project, quantities: Quantities, bases: Bases, step: Length): void {
  for (const [id, { stock }] of project.pieces) {
    const base = bases.get(id);
    const sheets = stock ? (project.stock.get(stock.value)?.sheets ?? []) : [];
    if (!base) continue;
    const [width, height] = [quantities.own(base.width), quantities.own(base.height)];
    const [fits] = sheets.flatMap(({ size }) => {
      const [across, upright] = [size.width.value, size.height.value];
      if (!width.greaterThan(across) && !height.greaterThan(upright)) return [[across, upright] as const];
      if (!width.greaterThan(upright) && !height.greaterThan(across)) return [[upright, across] as const];
      return [];
    });
    if (!fits) continue;
    quantities.keepUnder(base.width, nearest(fits[0], step));
    quantities.keepUnder(base.height, nearest(fits[1], step));
  }
}

/** The quantities of the first rung that has a solution, and what each becomes; plainly rounded when none has. */
function solve(
  project: Project,
  shapes: Shapes,
  trial: Trial,
  large: LargeSolver | undefined,
): { readonly quantities: Quantities; readonly found: readonly Length[] } {
  for (const { strictness, reach } of RUNGS) {
    const quantities = relate(project, shapes, trial, strictness);
    const problem = quantities.problem(reach);
    const small = nearestWholeNumbers(problem);
    const search = small.kind === 'unfinished' && large ? large(problem) : small;
    if (search.kind !== 'best') continue;
    const lengths = quantities.lengths(search.best.values);
    return { quantities, found: quantities.all.map(({ own }, index) => lengths[index] ?? own) };
  }
  const quantities = relate(project, shapes, trial, 'half reveals');
  return { quantities, found: quantities.all.map(({ own }) => nearest(own, trial.step)) };
}

function judged(table: readonly Respelled[]): Pick<WorkedOut, 'table' | 'deviation' | 'within' | 'strained'> {
  const deviations = table.map(({ own, edition }) => edition.minus(own).abs());
  const deviation = Length.max(Length.zero, ...deviations);
  const strained = table.filter((_, index) => deviations[index]?.greaterThan(REACH));
  return { table, deviation, within: strained.length === 0, strained };
}

function respelled({ own, names }: Quantity, edition: Length | undefined): Respelled {
  return { names, own, edition: edition ?? own };
}

function stepOf({ unit, metric }: Project): Length {
  if (unit !== 'in') return Length.of(1, 16, 'in');
  return metric === 'half' ? Length.of(1, 2, 'mm') : Length.of(1, 1, 'mm');
}

function nearest(own: Length, step: Length): Length {
  const rounded = step.times(roundHalfAway(own.over(step)));
  return rounded.sign === 0 && own.sign > 0 ? step : rounded;
}
