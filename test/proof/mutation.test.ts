import { describe, expect, it } from 'vitest';
import { Length } from '../../src/measure/length.ts';
import { proofProject } from '../../src/proof/proof.ts';
import { tolerance } from '../../src/shape/closure/tolerance.ts';
import { forms } from '../../src/shape/forms/index.ts';
import type { Net } from '../../src/shape/net.ts';
import { cross, dot, minus, unit } from '../../src/shape/space.ts';
import { KEEPER, OPEN_TRAY, projectOf, shapesOf, sheetOf, TRADE_FACT } from '../shape/boxes.ts';
import { CARDSTOCK } from '../shape/forms/building.ts';
import { foldedByThree } from '../shape/three-fold.ts';
import { type ScoreLine, scoreLinesOf, withLineMoved } from './mutation.ts';
import { workspaceOf } from './workspace.ts';

/** One groove of a usual score board. */
const GROOVE: Length = Length.of(1, 8, 'in');

/** A net with one score line moved by one groove, either way, and the rules that object to it. */
type Move = { readonly key: string; readonly net: Net; readonly rules: readonly string[] };

const FOLD_RULES: ReadonlySet<string> = new Set([
  'bottom-gap',
  'does-not-close',
  'flap-too-long',
  'glue-misses',
  'glue-overlap',
  'loose-part',
  'missing-slit',
  'panels-collide',
  'tuck-does-not-fit',
  'uneven-fold',
  'walls-unequal',
]);

const sheets: readonly (readonly [string, string])[] = [
  ['keeper', sheetOf(KEEPER)],
  ['trade-fact box', sheetOf(TRADE_FACT)],
  ['open tray', sheetOf(OPEN_TRAY)],
  ...forms.map(({ name, example }) => {
    const lines = [`form: ${name}`, ...example.settings].map((line) => `\n  ${line}`);
    return [name, sheetOf(lines.join(''))] as const;
  }),
];

/** The rules of the fold that object to one sheet of a project once its net is another. */
function rulesAgainst(net: Net, id: string, sheet: string): string[] {
  const [workspace, project, shapes] = [workspaceOf(sheet), projectOf(sheet), shapesOf(sheet)];
  const nets = new Map([...shapes.nets, [id, net]]);
  const findings = proofProject(workspace, project, { ...shapes, nets }).filter(({ rule }) =>
    FOLD_RULES.has(rule),
  );
  return [...new Set(findings.map(({ rule }) => rule))];
}

function movesOf([name, sheet]: readonly [string, string]): Move[] {
  return [...shapesOf(sheet).nets].flatMap(([id, net]) =>
    scoreLinesOf(net).flatMap((line) =>
      (['-', '+'] as const).map((way) => {
        const moved = withLineMoved(net, line, GROOVE.times(way === '+' ? 1 : -1));
        const key = `${id === 'box' ? name : `${name} ${id}`}: ${firstFoldOn(net, line)} ${way}`;
        return { key, net: moved, rules: rulesAgainst(moved, id, sheet) };
      }),
    ),
  );
}

/** The first fold on a line, enough to tell the line by. */
function firstFoldOn({ folds }: Net, { lines, position }: ScoreLine): string {
  const on = folds.find(({ from, to }) =>
    lines === 'upright'
      ? from.x.equals(position) && to.x.equals(position)
      : from.y.equals(position) && to.y.equals(position),
  );
  return on?.panels.join('|') ?? '';
}

const BOTTOM =
  'one bottom flap lies over the other and still reaches across: the box is an eighth taller, its bottom flaps an eighth shorter';
const SIDES =
  'front and back are cut along this line too: the envelope is an eighth wider or narrower, its side flap the other way';
const GUSSET =
  'the crease of the gusset is off its middle, which nothing meets: the standing bag is square all the same';
const CURVE =
  'a curved score is drawn round a template and lies in no position: a flap an eighth wider or narrower still meets its mate over the whole end';

/** The moves no rule objects to, each with the reason why what comes of it still folds and closes. */
const STILL_FOLDS: Readonly<Record<string, string>> = {
  'keeper: A3|A4 +': BOTTOM,
  'trade-fact box: A3|A4 +': BOTTOM,
  'clip-top box: left|left-bottom +': BOTTOM,
  'gusseted bag: back|back-bottom -':
    'the bottom flaps lie over each other by an inch, now by an inch and a quarter',
  'gusseted bag: back|back-bottom +':
    'the bottom flaps lie over each other by an inch, now by three quarters',
  'gusseted bag: left-back|left-front -': GUSSET,
  'gusseted bag: left-back|left-front +': GUSSET,
  'gusseted bag: right-front|right-back -': GUSSET,
  'gusseted bag: right-front|right-back +': GUSSET,
  'envelope: left-flap|front -': SIDES,
  'envelope: left-flap|front +': SIDES,
  'envelope: front|right-flap -': SIDES,
  'envelope: front|right-flap +': SIDES,
  'envelope: flap|front -': 'the closing flap is an eighth shorter and still comes down over the back',
  'envelope: flap|front +':
    'the closing flap is an eighth longer, the front as much lower and still higher than the back',
  'envelope: front|back -': 'the back is an eighth higher and still lower than the front',
  'envelope: front|back +': 'the back is an eighth lower, and the closing flap still comes down over it',
  'pillow box: front|front-top -': CURVE,
  'pillow box: front|front-top +': CURVE,
  'pillow box: front|front-bottom -': CURVE,
  'pillow box: front|front-bottom +': CURVE,
};

describe('moving one score line by a groove of the board', () => {
  const moves = sheets.flatMap(movesOf);
  const missed = moves.filter(({ rules }) => rules.length === 0);

  it.each(sheets)('starts from a %s that proofs clean', (_, sheet) => {
    for (const [id, net] of shapesOf(sheet).nets) expect(rulesAgainst(net, id, sheet)).toEqual([]);
  });

  it('is caught, but for the moves listed, each of which still folds for the reason given', () => {
    expect(missed.map(({ key }) => key).toSorted()).toEqual(Object.keys(STILL_FOLDS).toSorted());
  });

  it('is caught in at least 95 of 100 cases in which the shape does not close', () => {
    const caught = moves.length - missed.length;
    const open = moves.filter(({ key }) => !(key in STILL_FOLDS)).length;
    expect(moves.length).toBeGreaterThan(140);
    expect(caught / open).toBeGreaterThanOrEqual(0.95);
  });

  it.each(missed)('leaves every glue area on its mate where it is not caught: $key', ({ net }) => {
    const base = net.panels.find(({ id }) => id === 'front')?.id ?? net.panels[0]?.id ?? '';
    const folded = foldedByThree(net, base);
    for (const { from, to } of net.glue) {
      const [origin, right, , down] = folded.get(to) ?? [];
      if (!origin || !right || !down) throw new Error(`${to} has no corners`);
      const normal = unit(cross(minus(right, origin), minus(down, origin)));
      for (const corner of folded.get(from) ?? []) {
        expect(Math.abs(dot(normal, minus(corner, origin)))).toBeLessThan(tolerance(CARDSTOCK).mm);
      }
    }
  });

  it('is reported by each of the rules of walls, ends, flaps and tucks', () => {
    const speaking = new Set(moves.flatMap(({ rules }) => rules));
    expect([...speaking].toSorted()).toEqual([
      'bottom-gap',
      'does-not-close',
      'flap-too-long',
      'panels-collide',
      'tuck-does-not-fit',
      'uneven-fold',
      'walls-unequal',
    ]);
  });
});
