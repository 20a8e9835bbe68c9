import type { Mutant } from './mutants.ts';
import type { Kind } from './mutations.ts';
import type { SecondOpinion } from './second-opinion.ts';

/** A net with a slip in it that nothing objects to, and what another folding makes of it and of the right one. */
export type Survivor = Mutant & { readonly before: SecondOpinion; readonly after: SecondOpinion };

/** Why such slips do no harm, and what must be seen when they are folded for that to be true. */
type Reason = {
  readonly kinds: readonly Kind[];
  /** Of a net by its name, and of a slip. */
  readonly nets: RegExp;
  readonly slips: RegExp;
  readonly why: string;
  /** What speaks against it; nothing when it is true. */
  readonly against: (survivor: Survivor) => readonly string[];
};

/** Square millimeters by which what is cut at a taper may differ. */
const SLIVER = 2;

/** The reasons that speak for a slip. */
export function reasonsFor({ kind, slip, of }: Mutant): readonly Reason[] {
  return REASONS.filter(
    ({ kinds, nets, slips }) => kinds.includes(kind) && nets.test(of.name) && slips.test(slip),
  );
}

/** Those of the panels that closed an end, or covered one another, that no longer cover as much of it. */
function uncovered({ before, after }: Survivor, among: RegExp = /./u): string[] {
  const stacks = before.stacks().filter((stack) => stack.some((id) => among.test(id)));
  return stacks.flatMap((stack) => {
    const [was, is] = [before.areaCovered(stack), after.areaCovered(stack)];
    return is < was - SLIVER ? [`${stack.join(', ')} cover ${is} mm2 instead of ${was}`] : [];
  });
}

/** Nothing sticks out that did not before. */
function outgrown({ before, after }: Survivor): string[] {
  const was = before.extent();
  return after.extent().flatMap((is, index) => {
    const less = was[index] ?? 0;
    return is > less + 0.6 ? [`it measures ${is} mm where it was ${less}`] : [];
  });
}

/** Panels, all of the net when none are named, that do not lie on one of them and within it. */
function beside({ net, after }: Survivor, base: string, panels = net.panels.map(({ id }) => id)): string[] {
  return panels.flatMap((id) => {
    const area = after.areaBeside(id, base);
    return area > SLIVER ? [`${area} mm2 of ${id} lie beside ${base}`] : [];
  });
}

/** What of a flap lies beside the panel it is glued to. */
function besideMate(survivor: Survivor, flap: string = survivor.slip): string[] {
  const mates = survivor.net.glue.filter(({ from }) => from === flap).map(({ to }) => to);
  return mates.length > 0
    ? mates.flatMap((mate) => beside(survivor, mate, [flap]))
    : [`${flap} is not glued`];
}

/** The closing flap of an envelope comes down over its back by half an inch at least. */
function flapShort({ net, after }: Survivor): string[] {
  const least = (12.7 * (net.panels.find(({ id }) => id === 'flap')?.box.right.mm ?? 0)) / 2;
  const area = after.areaOn('flap', 'back');
  return area < least ? [`the flap covers ${area} mm2 of the back`] : [];
}

/** What lies on a flap, and was wholly covered by it or by what it is like, is so still. */
function noLongerCovers({ slip, before, after, net }: Survivor): string[] {
  return net.panels
    .filter(({ id }) => id !== slip && before.areaOn(id, slip) > SLIVER)
    .filter(({ id }) => after.areaBeside(id, slip) > before.areaBeside(id, slip) + SLIVER)
    .map(({ id }) => `${slip} covers less of ${id}`);
}

export const REASONS: readonly Reason[] = [
  {
    kinds: ['moved line'],
    nets: /keeper|scored box|clip-top|bulb-box|short-pencil|plant-marker|gable|bird-seed-carrier/u,
    slips: /^(?:A3\|A4|left\|left-bottom|left\|A4|front\|front-bottom) \+/u,
    why: 'the box is an eighth taller and its bottom flaps an eighth shorter: those of front and back still lie over each other and cover the whole bottom',
    against: (survivor) => uncovered(survivor, /bottom|^[A-D]4$/u),
  },
  {
    kinds: ['moved line'],
    nets: /bag/u,
    slips: /^back\|back-bottom/u,
    why: 'the bag is an eighth taller or lower: its bottom flaps still lie over each other and cover the whole bottom',
    against: (survivor) => uncovered(survivor, /bottom/u),
  },
  {
    kinds: ['moved line'],
    nets: /envelope/u,
    slips: /./u,
    why: 'front, back and flap are cut along this line too: an envelope an eighth larger or smaller, whose flap still comes down over the back',
    against: (survivor) => [...beside(survivor, 'front'), ...flapShort(survivor)],
  },
  {
    kinds: ['moved line'],
    nets: /folder/u,
    slips: /pocket/u,
    why: 'the pockets are deeper by as much as the folder is lower, or the other way, and lie within it',
    against: (survivor) => ['left-pocket', 'right-pocket'].flatMap((pocket) => besideMate(survivor, pocket)),
  },
  {
    kinds: ['wrong mate'],
    nets: /keeper|scored box|short-pencil|bag|gable|bird-seed-carrier/u,
    slips: /./u,
    why: 'the flaps of that end lie in one plane, and in some order all that are glued touch one another over a quarter inch at least: it is as closed as it was',
    against: (survivor) => [...uncovered(survivor), ...survivor.after.glueThatNoOrderJoins()],
  },
  {
    kinds: ['reversed fold'],
    nets: /gable|bird-seed-carrier/u,
    slips: /^left-gable\|left-front-gusset$/u,
    why: 'this half of a gusset ends at the seam and hangs on its gable alone: outside or inside it closes nothing and is in the way of nothing',
    against: (survivor) => {
      const { folds, glue } = survivor.net;
      const joints = [...folds.map(({ panels }) => panels), ...glue.map(({ from, to }) => [from, to])];
      const others = joints.filter((panels) => panels.includes('left-front-gusset')).slice(1);
      return [...others.map((panels) => panels.join('|')), ...outgrown(survivor)];
    },
  },
  {
    kinds: ['longer flap', 'far too long flap'],
    nets: /./u,
    slips: /tab$|pocket$|^[AC][13]$/u,
    why: 'it still lies within what it is glued to, and touches it over a quarter inch at least, though another tab may lie between them somewhere',
    against: (survivor) => [...besideMate(survivor), ...survivor.after.glueThatNoOrderJoins()],
  },
  {
    kinds: ['longer flap'],
    nets: /./u,
    slips: /dust$|tuck$|bottom$|^[AC][24]$/u,
    why: 'it is still shorter than the room it folds into: nothing sticks out, and no less is covered',
    against: (survivor) => [...uncovered(survivor), ...outgrown(survivor)],
  },
  {
    kinds: ['longer flap'],
    nets: /envelope/u,
    slips: /./u,
    why: 'it still lies within the front',
    against: (survivor) => [...beside(survivor, 'front'), ...flapShort(survivor)],
  },
  {
    kinds: ['longer flap', 'far too long flap'],
    nets: /./u,
    slips: /(?:flange|handle)$|^[BD]1$/u,
    why: 'it stands higher than the other flange or handle, which lies on it as far as that reaches, so that the clip holds both',
    against: noLongerCovers,
  },
  {
    kinds: ['longer flap', 'far too long flap'],
    nets: /card/u,
    slips: /^(?:front|back|page-[14])$/u,
    why: 'nothing meets the edge of this leaf: it is seen to be longer than the next, which lies on it as it did',
    against: noLongerCovers,
  },
  {
    kinds: ['longer flap'],
    nets: /gate-fold/u,
    slips: /^(?:left|right)$/u,
    why: 'the gates close over each other by half an inch, and stay within the back',
    against: (survivor) => beside(survivor, 'back'),
  },
];
