import type { Project } from '../project/model.ts';
import { everyNode, placeOf } from '../project/prose/markdown.ts';
import type { At } from '../project/source.ts';

/** A link to the page of a project: `../seed-box/`, with or without the name of the page. */
const TO_PROJECT = /^\.\.\/([^./?#]+)\/?(?:index\.html)?(?:[?#].*)?$/u;

/** The addresses of the projects that a project's text links to, each where the link stands. */
export function projectLinks({ body, file }: Project): readonly At<string>[] {
  return [...everyNode(body)].flatMap((node) => {
    const slug = node.type === 'link' ? TO_PROJECT.exec(node.url)?.[1] : undefined;
    return slug === undefined ? [] : [{ value: slug, at: placeOf(node, file) }];
  });
}
