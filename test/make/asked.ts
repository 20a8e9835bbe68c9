import type { Workspace } from '../../src/project/model.ts';
import type { At } from '../../src/project/source.ts';

/** Every language that is named in a workspace, the site's first. */
export function languagesAsked({ site, projects }: Workspace): readonly At<string>[] {
  return [
    ...(site.languageAt ? [{ value: site.language, at: site.languageAt }] : []),
    ...projects.flatMap(({ lang }) => lang ?? []),
  ];
}
