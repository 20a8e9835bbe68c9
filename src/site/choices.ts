import type { Voice } from '../words/voice.ts';
import { type ListedProject, yearOf } from './listed.ts';

/** One way of narrowing the list: a name for the address, what it asks, and what there is to choose. */
type Filter = {
  readonly name: 'level' | 'time' | 'occasion' | 'tag' | 'year' | 'sort';
  readonly label: string;
  readonly any: string;
  readonly options: readonly { readonly value: string; readonly text: string }[];
};

/** Words for how hard a project is, the easiest first; others come after them. */
const LEVELS = ['beginner', 'easy', 'improver', 'intermediate', 'confident', 'advanced', 'expert'];
const MINUTES = [15, 30, 45, 60, 90, 120, 180];

/** What the projects differ in. What they all share is no choice. */
export function choicesOf(projects: readonly ListedProject[], voice: Voice): readonly Filter[] {
  const levels = distinct(projects.map(({ level }) => level)).toSorted((a, b) => rank(a) - rank(b));
  const choice = (name: Filter['name'], options: Filter['options']): Filter => filterOf(name, options, voice);
  const years = distinct(projects.map(({ session }) => yearOf(session))).toReversed();
  return [
    choice('level', levels.map(plainOption)),
    choice('time', timesOf(projects, voice)),
    choice('occasion', distinct(projects.map(({ occasion }) => occasion)).map(plainOption)),
    choice('tag', distinct(projects.flatMap(({ tags }) => tags)).map(plainOption)),
    choice('year', years.map(plainOption)),
  ].filter(({ name, options }) => options.length > (name === 'level' || name === 'year' ? 1 : 0));
}

/** How the list may be sorted other than by what is to come next. The page's script knows each. */
const SORTS = ['latest', 'title', 'time'];

export function sortChoice(voice: Voice): Filter {
  const options = SORTS.map((sort) => ({ value: sort, text: voice.say(`site-sort-${sort}`) }));
  return filterOf('sort', options, voice);
}

function filterOf(name: Filter['name'], options: Filter['options'], { say }: Voice): Filter {
  return { name, label: say(`site-find-${name}`), any: say(`site-find-any-${name}`), options };
}

/** Times that some projects fit into and some do not. */
function timesOf(projects: readonly ListedProject[], voice: Voice): Filter['options'] {
  const taken = projects.flatMap(({ minutes }) => minutes ?? []);
  return MINUTES.filter(
    (most) => taken.some((minutes) => minutes <= most) && taken.some((minutes) => minutes > most),
  ).map((most) => ({ value: String(most), text: voice.duration(most) }));
}

function distinct(texts: readonly (string | undefined)[]): readonly string[] {
  return [...new Set(texts)].filter((text) => text !== undefined).sort();
}

/** Begins with a capital, as the words beside it in the list of choices do. */
function plainOption(value: string): Filter['options'][number] {
  return { value, text: `${value.charAt(0).toLocaleUpperCase()}${value.slice(1)}` };
}

function rank(level: string): number {
  const place = LEVELS.indexOf(level.toLowerCase());
  return place < 0 ? LEVELS.length : place;
}
