import type { Project } from '../project/model.ts';
import type { ProjectPicture } from './pictures.ts';
import type { Card } from './record.ts';

/** What the index shows of a project. Paths are relative to the site's root. */
export function cardOf(project: Project, picture: Card['picture'], papers: Card['papers']): Card {
  return {
    slug: project.slug,
    title: project.title.value,
    ...optional('summary', project.summary?.value),
    ...optional('session', project.session?.value),
    ...optional('level', project.level?.value),
    ...optional('minutes', project.minutes?.value),
    ...optional('occasion', project.occasion?.value),
    tags: project.tags.map(({ value }) => value),
    ...optional('picture', picture),
    papers,
  };
}

/** The first photo, as the index shows it. */
export function firstPhoto(slug: string, pictures: readonly ProjectPicture[]): Card['picture'] {
  const [first] = pictures;
  if (!first) return undefined;
  const { alternative, width, height } = first;
  return { src: `${slug}/${first.name}`, alternative, width, height };
}

function optional<K extends string, V>(key: K, value: V | undefined): { [P in K]?: V } {
  return value === undefined ? {} : ({ [key]: value } as { [P in K]: V });
}
