import { examine } from '../examine/examine.ts';
import { type Kit, type KitOrder, type KitProgress, planKit } from '../kit/kit.ts';
import type { Currency } from '../kit/report/json.ts';
import type { Project, Workspace } from '../project/model.ts';
import { moneyDecimals } from '../project/reader.ts';
import { mergeFindings } from '../proof/tell.ts';
import { isFailure, type Told } from '../proof/told.ts';
import { loadHighs } from '../shape/highs.ts';
import { loadWorkspace } from '../shape/workspace.ts';

export type KitRequest = {
  /** The workspace's folder, absolute. */
  readonly root: string;
  /** The folder that paths in messages are relative to. */
  readonly namedFrom: string;
  readonly slug: string;
  /** What is asked for, once it is known in which project and on which bench. */
  readonly orderFor: (project: Project, workspace: Workspace) => KitOrder;
  /** Seconds since some moment, rising. */
  readonly clock: () => number;
  readonly progress?: KitProgress;
};

/** A kit that was planned; what stands in its way; or the slugs there are, when there is none of that name. */
export type KitReply =
  | {
      readonly kind: 'planned';
      readonly kit: Kit;
      readonly workspace: Workspace;
      readonly currency: Currency;
    }
  | {
      readonly kind: 'findings';
      readonly findings: readonly Told[];
      readonly projects: readonly Project[];
    }
  | { readonly kind: 'no such project'; readonly slugs: readonly string[] };

/** Plans the class kit of one project. Its findings of severity error stop it, as do pieces that cannot be planned. */
export async function requestKit(request: KitRequest): Promise<KitReply> {
  const workspace = await loadWorkspace(request.root, { namedFrom: request.namedFrom });
  const project = workspace.projects.find(({ slug }) => slug === request.slug);
  if (!project) return { kind: 'no such project', slugs: workspace.projects.map(({ slug }) => slug) };
  const [study] = examine(workspace, [project]);
  if (!study) throw new Error(`${project.slug} was not examined`);
  const findings = mergeFindings([...workspace.site.findings, ...study.findings]);
  if (isFailure(findings, false)) {
    return {
      kind: 'findings',
      findings: findings.filter(({ severity }) => severity === 'error'),
      projects: [project],
    };
  }
  const order = request.orderFor(project, workspace);
  const tools = { highs: await loadHighs(), clock: request.clock };
  const result = planKit(project, study.shapes, order, tools, request.progress);
  if ('findings' in result) {
    return { kind: 'findings', findings: mergeFindings(result.findings), projects: [project] };
  }
  const { currency } = workspace.site;
  return {
    kind: 'planned',
    kit: result.kit,
    workspace,
    currency: { code: currency, decimals: moneyDecimals(currency) },
  };
}
