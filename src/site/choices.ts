import type { Voice } from '../words/voice.ts';
import type { ListedProject } from './listed.ts';

/** One way of narrowing the list: a name for the address, what it asks, and what there is to choose. */
export type Choice = {
  readonly name: 'level' | 'time' | 'occasion' | 'tag';
  readonly label: string;
  readonly any: string;
  readonly options: readonly { readonly value: string; readonly text: string }[];
};

/** Words for how hard a project is, the easiest first; others come after them. */
const LEVELS = ['beginner', 'easy', 'improver', 'intermediate', 'confident', 'advanced', 'expert'];
const MINUTES = [15, 30, 45, 60, 90, 120, 180];

/** What the projects differ in. What they all share is no choice. */
export function choicesOf(projects: readonly ListedProject[], voice: Voice): readonly Choice[] {
  const levels = distinct(projects.map(({ level }) => level)).toSorted((a, b) => rank(a) - rank(b));
  const choice = (name: Choice['name'], options: Choice['options']): Choice => ({
    name,
    label: voice.say(`site-find-${name}`),
    any: voice.say(`site-find-any-${name}`),
    options,
  });
  return [
    choice('level', levels.map(plainOption)),
    choice('time', timesOf(projects, voice)),
    choice('occasion', distinct(projects.map(({ occasion }) => occasion)).map(plainOption)),
    choice('tag', distinct(projects.flatMap(({ tags }) => tags)).map(plainOption)),
  ].filter(({ name, options }) => options.length > (name === 'level' ? 1 : 0));
}

/** Times that some projects fit into and some do not. */
function timesOf(projects: readonly ListedProject[], voice: Voice): Choice['options'] {
  const taken = projects.flatMap(({ minutes }) => minutes ?? []);
  return MINUTES.filter(
    (most) => taken.some((minutes) => minutes <= most) && taken.some((minutes) => minutes > most),
  ).map((most) => ({ value: String(most), text: voice.duration(most) }));
}

function distinct(texts: readonly (string | undefined)[]): readonly string[] {
  return [...new Set(texts)].filter((text) => text !== undefined).sort();
}

/** Begins with a capital, as the words beside it in the list of choices do. */
function plainOption(value: string): Choice['options'][number] {
  return { value, text: `${value.charAt(0).toLocaleUpperCase()}${value.slice(1)}` };
}

function rank(level: string): number {
  const place = LEVELS.indexOf(level.toLowerCase());
  return place < 0 ? LEVELS.length : place;
}
