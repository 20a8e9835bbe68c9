import { type Editions, shownEditions } from '../edition/editions.ts';
import { type KitOrder, planKit } from '../kit/kit.ts';
import type { Kit, Making } from '../kit/plan.ts';
import type { Project, Workspace } from '../project/model.ts';
import { variantsOf } from '../words/variants.ts';
import { projectsNamed } from './named.ts';
import { type PlanReply, type PlanRequest, requestPlan } from './planning.ts';

export type KitRequest = PlanRequest & {
  readonly slug: string;
  /** What is asked for, once it is known in which project and on which bench. */
  readonly orderFor: (project: Project, workspace: Workspace) => KitOrder;
  /** How many attendees make each of its variants, by their places; everybody the first where it isn't said. */
  readonly attendeesOf?: (variants: readonly string[], order: KitOrder) => readonly number[];
};

/** A kit that was planned, or what prevents it. */
export type KitReply = Exclude<PlanReply<{ readonly kit: Kit }>, { kind: 'none' }>;

/** Plans the class kit of one project. @throws NoSuchProject when there is none of that name. */
export async function requestKit(request: KitRequest): Promise<KitReply> {
  const reply = await requestPlan(
    request,
    ({ projects }) => projectsNamed([request.slug], projects),
    ([{ project, editions }], workspace, tools) => {
      const order = request.orderFor(project, workspace);
      return planKit(makingsOf(editions, order, request), order, tools, request.progress);
    },
  );
  if (reply.kind === 'none') throw new Error(`${request.slug} was not examined`);
  return reply;
}

/** Each variant that somebody makes, in the edition that leads; the project itself where it has none. */
function makingsOf(
  editions: Editions,
  order: KitOrder,
  { attendeesOf }: KitRequest,
): readonly [Making, ...Making[]] {
  const [leading] = shownEditions(editions);
  const own = { ...editions[leading], attendees: order.attendees };
  const variants = variantsOf(editions).flatMap((each) => {
    const { variant } = each[leading].project;
    return variant ? [{ ...each[leading], id: variant.id.value, variant: variant.name }] : [];
  });
  const counts = attendeesOf?.(
    variants.map(({ id }) => id),
    order,
  ) ?? [order.attendees];
  const [first, ...others] = variants.flatMap(({ id: _, ...making }, index): Making[] => {
    const attendees = counts[index] ?? 0;
    return attendees > 0 ? [{ ...making, attendees }] : [];
  });
  return first ? [first, ...others] : [own];
}
