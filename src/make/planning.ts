import { examine } from '../examine/examine.ts';
import type { Study } from '../examine/study.ts';
import type { KitProgress } from '../kit/kit.ts';
import type { PlanTools } from '../kit/plan-stock.ts';
import type { Currency } from '../kit/report/figures.ts';
import type { Finding } from '../project/finding.ts';
import { moneyDecimals } from '../project/grammar/reader.ts';
import type { Project, Workspace } from '../project/model.ts';
import { mergeFindings } from '../proof/tell.ts';
import { isFailure, type Told } from '../proof/told.ts';
import { loadHighs } from '../shape/highs.ts';
import { loadWorkspace } from '../shape/workspace.ts';

/** What everything that is planned is asked for with. */
export type PlanRequest = {
  /** The workspace's folder, absolute. */
  readonly root: string;
  /** The folder that paths in messages are relative to. */
  readonly namedFrom: string;
  /** Seconds since some moment, rising. */
  readonly clock: () => number;
  readonly progress?: KitProgress;
};

/** A plan, or what prevents it; or nothing to plan for. */
export type PlanReply<Plan> =
  | ({ readonly kind: 'planned'; readonly workspace: Workspace; readonly currency: Currency } & Plan)
  | { readonly kind: 'findings'; readonly findings: readonly Told[]; readonly projects: readonly Project[] }
  | { readonly kind: 'none' };

/**
 * Reads a workspace, examines the projects that are chosen of it and plans for them. Their errors stop it, as do pieces
 * that cannot be planned.
 */
export async function requestPlan<Plan extends object>(
  { root, namedFrom, clock }: PlanRequest,
  choose: (workspace: Workspace) => readonly Project[],
  plan: (
    studies: readonly [Study, ...Study[]],
    workspace: Workspace,
    tools: PlanTools,
  ) => Plan | { readonly findings: readonly Finding[] },
): Promise<PlanReply<Plan>> {
  const workspace = await loadWorkspace(root, { namedFrom });
  const { site } = workspace;
  const [first, ...others] = examine(workspace, choose(workspace));
  if (!first) return { kind: 'none' };
  const studies = [first, ...others] as const;
  const projects = studies.map(({ project }) => project);
  const found = mergeFindings([...site.findings, ...studies.flatMap(({ findings }) => findings)]);
  if (isFailure(found, false)) {
    return { kind: 'findings', findings: found.filter(({ severity }) => severity === 'error'), projects };
  }
  const result = plan(studies, workspace, { highs: await loadHighs(), clock });
  if ('findings' in result) return { kind: 'findings', findings: mergeFindings(result.findings), projects };
  const currency = { code: site.currency, decimals: moneyDecimals(site.currency) };
  return { kind: 'planned', workspace, currency, ...result };
}
