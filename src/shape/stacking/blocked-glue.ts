import type { Face } from '../../project/ref.ts';
import { LEAST_GLUE } from '../closure/glue.ts';
import type { Fold, Mate } from '../net.ts';
import { pathBetween } from '../panel-tree.ts';
import { faceOn } from './glue-areas.ts';
import { heldApart, meetingOf, stuckThrough } from './meeting.ts';
import type { Stack } from './stack.ts';

/** Glue marks whose panels lie over one another and yet don't meet, because others lie between them. */
export type BlockedGlue = { readonly mate: Mate; readonly between: readonly string[] };

/** Panels that are folded onto one side of a panel, while what they are to stick to lies on its other side. */
export type Astray = {
  readonly mates: readonly Mate[];
  /** The panel that is folded the wrong way, by that fold: it lies on that face of the panel both hang on. */
  readonly panel: string;
  readonly face: Face;
  readonly fold: Fold;
  readonly around: string;
  /** What is to stick to it, on the other face. */
  readonly others: readonly string[];
};

/** The glue of a stack that something lies between, but for what is folded to the other side. */
export function blockedGlue(stack: Stack): readonly BlockedGlue[] {
  return blocked(stack).filter((each) => hungOn(stack, each) === undefined);
}

/** Every panel that is folded to the other side of the paper than what it is to stick to, once. */
export function gluedAstray(stack: Stack): readonly Astray[] {
  const { shape, sides } = stack;
  const found = new Map<string, Astray>();
  const all = blocked(stack);
  const isFine = (mate: Mate): boolean => !all.some((each) => each.mate === mate);
  for (const glue of all) {
    const around = hungOn(stack, glue);
    const { mate } = glue;
    const panel = likelierWrong(mate, shape.net.glue, isFine);
    const side = around === undefined ? undefined : sides.of(around, panel);
    const fold = pathBetween(shape.net, around ?? panel, panel)?.at(0)?.fold;
    if (around === undefined || side === undefined || !fold) continue;
    const { mates = [], others = [] } = found.get(panel) ?? {};
    const other = panel === mate.from ? mate.to : mate.from;
    found.set(panel, {
      mates: [...mates, mate],
      panel,
      fold,
      face: faceOn(side),
      around,
      others: [...others, other],
    });
  }
  return [...found.values()];
}

/** Of two panels that don't meet, the one that meets nothing else either; of two such the one that should meet more. */
function likelierWrong({ from, to }: Mate, glue: readonly Mate[], isFine: (mate: Mate) => boolean): string {
  const of = (panel: string): readonly Mate[] =>
    glue.filter((mate) => mate.from === panel || mate.to === panel);
  const [meetsFrom, meetsTo] = [of(from).some(isFine), of(to).some(isFine)];
  if (meetsFrom !== meetsTo) return meetsFrom ? to : from;
  return of(to).length > of(from).length ? to : from;
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
