import { type Edition, shownEditions } from '../edition/editions.ts';
import type { Study } from '../examine/study.ts';
import type { KitOrder } from '../kit/kit.ts';
import type { Project, Workspace } from '../project/model.ts';
import { planSeason, type Season } from '../season/season.ts';
import type { SeasonSession } from '../season/session.ts';
import { variantsOf } from '../words/variants.ts';
import { type PlanReply, type PlanRequest, requestPlan } from './planning.ts';

export type SeasonRequest = PlanRequest & {
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
};

/** A season that was planned; what prevents it; or no session in that time. */
export type SeasonReply = PlanReply<{ readonly season: Season }>;

/** Plans all the sessions of a period together. */
export function requestSeason(request: SeasonRequest): Promise<SeasonReply> {
  const { from, to, attendeesAt, variantAt, orderFor, progress } = request;
  const attendees = new Map<string, number>();
  return requestPlan(
    request,
    (workspace) => {
      const dated = workspace.projects.filter(({ session }) => session && isWithin(session.value, from, to));
      for (const project of dated) attendees.set(project.slug, attendeesAt(project, workspace));
      return dated.filter(({ slug }) => attendees.get(slug));
    },
    (studies, workspace, tools) => {
      const sessions = studies.flatMap((study) =>
        sessionOf(study, attendees.get(study.project.slug) ?? 0, (project, variants) =>
          variantAt?.(project, variants, workspace),
        ),
      );
      return planSeason(sessions, orderFor(studies[0].project, workspace), tools, progress);
    },
  );
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
