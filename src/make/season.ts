import { type Edition, shownEditions } from '../edition/editions.ts';
import { examine } from '../examine/examine.ts';
import type { Study } from '../examine/study.ts';
import type { KitOrder, KitProgress } from '../kit/kit.ts';
import type { Currency } from '../kit/report/figures.ts';
import { moneyDecimals } from '../project/grammar/reader.ts';
import type { Project, Workspace } from '../project/model.ts';
import { mergeFindings } from '../proof/tell.ts';
import { isFailure, type Told } from '../proof/told.ts';
import { planSeason, type Season } from '../season/season.ts';
import type { SeasonSession } from '../season/session.ts';
import { loadHighs } from '../shape/highs.ts';
import { loadWorkspace } from '../shape/workspace.ts';
import { variantsOf } from '../words/variants.ts';

export type SeasonRequest = {
  /** The workspace's folder, absolute, and the folder that paths in messages are relative to. */
  readonly root: string;
  readonly namedFrom: string;
  /** `YYYY-MM-DD`: the first day and the last; until the last session where that is not said. */
  readonly from: string;
  readonly to: string | undefined;
  /** How many come to a session; @throws where that is not known. */
  readonly attendeesAt: (project: Project, workspace: Workspace) => number;
  /** Which of a project's variants is made there, by its name in the sheet; the first where it isn't said. */
  readonly variantAt?: (
    project: Project,
    variants: readonly string[],
    workspace: Workspace,
  ) => string | undefined;
  readonly orderFor: (first: Project, workspace: Workspace) => Pick<KitOrder, 'spares' | 'bench' | 'work'>;
  /** Seconds since some moment, rising. */
  readonly clock: () => number;
  readonly progress?: KitProgress;
};

/** A season that was planned; what stands in its way; or no session in that time. */
export type SeasonReply =
  | {
      readonly kind: 'planned';
      readonly season: Season;
      readonly workspace: Workspace;
      readonly currency: Currency;
    }
  | { readonly kind: 'findings'; readonly findings: readonly Told[]; readonly projects: readonly Project[] }
  | { readonly kind: 'none' };

/** Plans all sessions of a time together. Errors of one of their projects stop it, as do pieces that cannot be planned. */
export async function requestSeason(request: SeasonRequest): Promise<SeasonReply> {
  const { root, namedFrom, from, to } = request;
  const workspace = await loadWorkspace(root, { namedFrom });
  const { site } = workspace;
  const dated = workspace.projects.filter(({ session }) => session && isWithin(session.value, from, to));
  const attendees = new Map(dated.map((project) => [project.slug, request.attendeesAt(project, workspace)]));
  const studies = examine(
    workspace,
    dated.filter(({ slug }) => attendees.get(slug)),
  );
  const projects = studies.map(({ project }) => project);
  const [first] = projects;
  if (!first) return { kind: 'none' };
  const found = mergeFindings([...site.findings, ...studies.flatMap(({ findings }) => findings)]);
  if (isFailure(found, false)) {
    return { kind: 'findings', findings: found.filter(({ severity }) => severity === 'error'), projects };
  }
  const sessions = studies.flatMap((study) =>
    sessionOf(study, attendees.get(study.project.slug) ?? 0, (project, variants) =>
      request.variantAt?.(project, variants, workspace),
    ),
  );
  const tools = { highs: await loadHighs(), clock: request.clock };
  const result = planSeason(sessions, request.orderFor(first, workspace), tools, request.progress);
  if ('findings' in result) return { kind: 'findings', findings: mergeFindings(result.findings), projects };
  const currency = { code: site.currency, decimals: moneyDecimals(site.currency) };
  return { kind: 'planned', season: result.season, workspace, currency };
}

/** Days are compared as they are written. */
function isWithin(date: string, from: string, to: string | undefined): boolean {
  return date >= from && (to === undefined || date <= to);
}

/** In the edition that leads; of a project with variants one of them. */
function sessionOf(
  { editions, project: written }: Study,
  attendees: number,
  variantAt: (project: Project, variants: readonly string[]) => string | undefined,
): readonly SeasonSession[] {
  const [leading] = shownEditions(editions);
  const variants = variantsOf(editions).map((each) => each[leading]);
  const nameOf = (each: Edition): string | undefined => each.project.variant?.id.value;
  const wanted = variantAt(
    written,
    variants.flatMap((each) => nameOf(each) ?? []),
  );
  const edition = variants.find((each) => nameOf(each) === wanted) ?? editions[leading];
  const { project } = edition;
  if (!project.session) return [];
  const session = { project, date: project.session.value };
  return [{ ...edition, session, attendees, variant: project.variant?.name }];
}
