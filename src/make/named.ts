import type { Project } from '../project/model.ts';

/** A project was named that is not there. */
export class NoSuchProject extends Error {
  override readonly name = 'NoSuchProject';

  constructor(slug: string, slugs: readonly string[]) {
    super(
      `no project named "${slug}" here; ${slugs.length === 0 ? 'there are none' : `the projects are: ${slugs.join(', ')}`}`,
    );
  }
}

/** The projects with these slugs; all when none is named. @throws NoSuchProject when one is not there. */
export function projectsNamed<T extends Pick<Project, 'slug'>>(
  slugs: readonly string[] | undefined,
  projects: readonly T[],
): readonly T[] {
  const there = projects.map(({ slug }) => slug);
  const missing = slugs?.find((slug) => !there.includes(slug));
  if (missing !== undefined) throw new NoSuchProject(missing, there);
  return projects.filter(({ slug }) => slugs?.includes(slug) ?? true);
}
