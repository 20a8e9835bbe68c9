import type { Face } from '../../project/ref.ts';
import { LEAST_GLUE } from '../closure/glue.ts';
import type { Fold, Mate } from '../net.ts';
import { pathBetween } from '../panel-tree.ts';
import { faceOn } from './glue-areas.ts';
import { heldApart, meetingOf, stuckThrough } from './meeting.ts';
import type { Side } from './sides.ts';
import type { Stack } from './stack.ts';

/** The side of a panel on which its outside is. */
const OUTER: Side = 1;

/** Glue marks whose panels lie over one another and yet don't meet, because others lie between them. */
export type BlockedGlue = { readonly mate: Mate; readonly between: readonly string[] };

/** Panels that are folded onto one side of a panel, while what they are to stick to lies on its other side. */
export type Astray = {
  readonly mates: readonly Mate[];
  /** The panels that are folded the wrong way, the first by that fold: they lie on that face of the panel all hang on. */
  readonly panels: readonly string[];
  readonly face: Face;
  readonly fold: Fold;
  readonly around: string;
  /** What is to stick to them, on the other face. */
  readonly others: readonly string[];
  /** Whether it may as well be the others that are folded the wrong way. */
  readonly isEither: boolean;
};

/** The glue of a stack that something lies between, but for what is folded to the other side. */
export function blockedGlue(stack: Stack): readonly BlockedGlue[] {
  return blocked(stack).filter((each) => hungOn(stack, each) === undefined);
}

/** The panels that are folded to the other side of the paper than what they are to stick to: those of one face once. */
export function gluedAstray(stack: Stack): readonly Astray[] {
  const found = new Map<string, Astray>();
  const all = blocked(stack);
  const isFine = (mate: Mate): boolean => !all.some((each) => each.mate === mate);
  for (const glue of all) {
    const one = astrayAt(stack, glue, isFine);
    if (!one) continue;
    const key = `${one.around} ${one.face} ${one.isEither}`;
    found.set(key, together(found.get(key) ?? one, one));
  }
  return [...found.values()];
}

function together(first: Astray, next: Astray): Astray {
  const join = <T>(one: readonly T[], other: readonly T[]): T[] => [...new Set([...one, ...other])];
  return {
    ...first,
    mates: join(first.mates, next.mates),
    panels: join(first.panels, next.panels),
    others: join(first.others, next.others),
  };
}

/** Of two panels that don't meet, the one that meets nothing else either; of two such the one that shows outside. */
function astrayAt(stack: Stack, glue: BlockedGlue, isFine: (mate: Mate) => boolean): Astray | undefined {
  const { shape, sides } = stack;
  const { mate } = glue;
  const { from, to } = mate;
  const around = hungOn(stack, glue);
  if (around === undefined) return undefined;
  const meetsAny = (panel: string): boolean =>
    shape.net.glue.some((each) => (each.from === panel || each.to === panel) && isFine(each));
  const isOutside = (panel: string): boolean => sides.of(around, panel) === OUTER;
  const isEither = meetsAny(from) === meetsAny(to);
  const isTo = isEither ? isOutside(to) : meetsAny(from);
  const [panel, other] = isTo ? [to, from] : [from, to];
  const side = sides.of(around, panel);
  const fold = pathBetween(shape.net, around, panel)?.at(0)?.fold;
  if (side === undefined || !fold) return undefined;
  return { mates: [mate], panels: [panel], fold, face: faceOn(side), around, others: [other], isEither };
}

function blocked(stack: Stack): readonly BlockedGlue[] {
  return heldApart(stack, stack.shape.net.glue, LEAST_GLUE.mm).map((mate) => ({
    mate,
    between: meetingOf(stack, mate.from, mate.to, stuckThrough(stack, mate)).between,
  }));
}

/** The panel between two that both hang on, folded to different sides of it. */
function hungOn({ shape }: Stack, { mate: { from, to }, between }: BlockedGlue): string | undefined {
  const path = pathBetween(shape.net, from, to) ?? [];
  return path.map(({ parent }) => parent).find((panel) => panel !== from && between.includes(panel));
}
