import { type Editions, shownEditions } from '../edition/editions.ts';
import { examine } from '../examine/examine.ts';
import { type KitOrder, type KitProgress, planKit } from '../kit/kit.ts';
import type { Kit, Making } from '../kit/plan.ts';
import type { Currency } from '../kit/report/figures.ts';
import { moneyDecimals } from '../project/grammar/reader.ts';
import type { Project, Workspace } from '../project/model.ts';
import { mergeFindings } from '../proof/tell.ts';
import { isFailure, type Told } from '../proof/told.ts';
import { loadHighs } from '../shape/highs.ts';
import { loadWorkspace } from '../shape/workspace.ts';
import { variantsOf } from '../words/variants.ts';
import { projectsNamed } from './named.ts';

export type KitRequest = {
  /** The workspace's folder, absolute. */
  readonly root: string;
  /** The folder that paths in messages are relative to. */
  readonly namedFrom: string;
  readonly slug: string;
  /** What is asked for, once it is known in which project and on which bench. */
  readonly orderFor: (project: Project, workspace: Workspace) => KitOrder;
  /** How many attendees make each of its variants, by their places; everybody the first where it isn't said. */
  readonly attendeesOf?: (variants: readonly string[], order: KitOrder) => readonly number[];
  /** Seconds since some moment, rising. */
  readonly clock: () => number;
  readonly progress?: KitProgress;
};

/** A kit that was planned, or what stands in its way. */
export type KitReply =
  | {
      readonly kind: 'planned';
      readonly kit: Kit;
      readonly workspace: Workspace;
      readonly currency: Currency;
    }
  | { readonly kind: 'findings'; readonly findings: readonly Told[]; readonly project: Project };

/**
 * Plans the class kit of one project. Its findings of severity error stop it, as do pieces that cannot be planned.
 * @throws NoSuchProject when there is none of that name.
 */
export async function requestKit(request: KitRequest): Promise<KitReply> {
  const workspace = await loadWorkspace(request.root, { namedFrom: request.namedFrom });
  const { site } = workspace;
  const [study] = examine(workspace, projectsNamed([request.slug], workspace.projects));
  if (!study) throw new Error(`${request.slug} was not examined`);
  const { project } = study;
  const findings = mergeFindings([...site.findings, ...study.findings]);
  if (isFailure(findings, false)) {
    return { kind: 'findings', findings: findings.filter(({ severity }) => severity === 'error'), project };
  }
  const order = request.orderFor(project, workspace);
  const makings = makingsOf(study.editions, order, request);
  const tools = { highs: await loadHighs(), clock: request.clock };
  const result = planKit(makings, order, tools, request.progress);
  if ('findings' in result) return { kind: 'findings', findings: mergeFindings(result.findings), project };
  const currency = { code: site.currency, decimals: moneyDecimals(site.currency) };
  return { kind: 'planned', kit: result.kit, workspace, currency };
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
