import type { ListedProject } from './listed.ts';

/** The ways from a project's page into the list: to all of its occasion, to all of each of its kinds. */
export function kindsOf({ occasion, tags }: ListedProject): readonly object[] {
  const linkTo = (name: 'occasion' | 'tag', value: string): object => ({
    text: value,
    href: `../index.html#${new URLSearchParams({ [name]: value }).toString()}`,
  });
  return [
    ...(occasion === undefined ? [] : [linkTo('occasion', occasion)]),
    ...tags.map((tag) => linkTo('tag', tag)),
  ];
}
