import { toString as textWithin } from 'mdast-util-to-string';
import { visit } from 'unist-util-visit';
import { withoutHost } from '../handout/markdown-handlers.ts';
import type { Project, Step } from '../project/model.ts';
import type { ReferenceKind } from '../project/prose/reference.ts';
import { readRef } from '../project/ref.ts';
import type { Supply } from '../project/supply.ts';
import { supplyCalled, supplyNamed } from '../project/supply-names.ts';

/** Naming a piece so, a step takes it in hand; a size, a count or a drawing only tells of it. */
const TAKES_UP: ReadonlySet<string> = new Set([
  'piece',
  'reveal',
  'scores',
  'trims',
  'assembly',
  'edge',
  'impressions',
] satisfies ReferenceKind[]);

/** Ids of the pieces a step takes up, in the order it names them; what only the demonstrator is told does not count. */
export function piecesNamed(step: Step): ReadonlySet<string> {
  return namedBy(TAKES_UP, step);
}

/** Ids of the pieces that a step names by references of these kinds. */
function namedBy(kinds: ReadonlySet<string>, { heading, prose }: Step): ReadonlySet<string> {
  const pieces = new Set<string>();
  const children = [...heading, ...withoutHost(prose.nodes)];
  visit({ type: 'root', children }, 'textDirective', (node) => {
    if (kinds.has(node.name)) pieces.add(readRef(textWithin(node).trim()).piece);
  });
  return pieces;
}

const STAMPS: ReadonlySet<string> = new Set(['impressions'] satisfies ReferenceKind[]);

/**
 * The supplies a step takes up, in order: those that its author lists for it; else the stamps and inks of the images it says
 * to stamp. Words in it tell nothing that can be relied on.
 */
function suppliesNamed(step: Step, { pieces, supplies }: Project): readonly Supply[] {
  const listed = step.uses.map(({ value }) => supplyCalled(supplies, value));
  const stamped = [...namedBy(STAMPS, step)]
    .flatMap((id) => pieces.get(id)?.impressions ?? [])
    .flatMap(({ stamp, ink }) => [
      supplyNamed(supplies, 'stamp', stamp.value),
      ink && supplyNamed(supplies, 'ink', ink.value),
    ]);
  return (listed.length > 0 ? listed : stamped).flatMap((supply) => supply ?? []);
}

/** What a step is the first to take up, by what it refers to. */
type FirstUse = {
  /** From 1; undefined for what no step says anything of. */
  readonly step: number | undefined;
  /** Ids. */
  readonly pieces: readonly string[];
  readonly supplies: readonly Supply[];
};

/** By steps, in their order, and last what is left of the supplies. */
export function firstUses(project: Project): readonly FirstUse[] {
  const taken = new Set<string | Supply>();
  const isNew = (thing: string | Supply): boolean => !taken.has(thing) && taken.add(thing).has(thing);
  const uses = project.steps.map((step, index) => ({
    step: index + 1,
    pieces: [...piecesNamed(step)].filter(isNew),
    supplies: suppliesNamed(step, project).filter(isNew),
  }));
  return [...uses, { step: undefined, pieces: [], supplies: project.supplies.filter(isNew) }];
}
