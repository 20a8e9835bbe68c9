import type { PublishedState } from '../project/ledger.ts';
import type { Say } from '../words/labels.ts';
import { sheetNamed } from '../words/names.ts';

/** What changed between two states, in sentences of the project's language, and the pieces to cut again. */
export type Changes = { readonly changes: readonly string[]; readonly recut: readonly string[] };

/** Compares what was published with what is there now; nothing when nothing that counts has changed. */
export function changesBetween(before: PublishedState, after: PublishedState, say: Say): Changes {
  return {
    changes: [
      ...measurementChanges(before.measurements, after.measurements, say),
      ...stepChanges(before.steps, after.steps, say),
    ],
    recut: recutBetween(before.measurements, after.measurements),
  };
}

type Measurements = PublishedState['measurements'];

function measurementChanges(before: Measurements, after: Measurements, say: Say): string[] {
  const added = Object.keys(after).filter((name) => !(name in before));
  const changed = Object.keys(after).filter((name) => name in before && before[name] !== after[name]);
  const removed = Object.keys(before).filter((name) => !(name in after));
  const tell = (key: string, name: string): string =>
    say(key, {
      what: spoken(name, say),
      before: valueSpoken(before[name] ?? '', say),
      after: valueSpoken(after[name] ?? '', say),
    });
  return [
    ...changed.map((name) => tell(/ scores /u.test(name) ? 'change-were' : 'change-was', name)),
    ...added.filter((name) => isWhole(name, added)).map((name) => tell('change-new', name)),
    ...removed.filter((name) => isWhole(name, removed)).map((name) => tell('change-gone', name)),
  ];
}

/** `the place of front` of `front: place`. */
function spoken(name: string, say: Say): string {
  const [piece = name, aspect = ''] = name.split(': ');
  const key = `change-of-${aspect.replaceAll(' ', '-')}`;
  return say.has(key) ? say(key, { piece }) : name;
}

/** A place as a state has it. */
const PLACE =
  /^on (?<base>.+), (?<left>.+) from the left and (?<top>.+) from the top(?:, turned (?<turn>.+)°)?$/u;

/** A state's value in the project's language; what is compared is the same in all of them. */
function valueSpoken(value: string, say: Say): string {
  const figured = value.replace(/\d+\.\d+/gu, (figure) => say.figure(figure));
  const { base = '', left = '', top = '', turn } = PLACE.exec(figured)?.groups ?? {};
  if (base === '') return figured;
  const place = { base: sheetNamed(base, say), left, top };
  return turn === undefined ? say('change-place', place) : say('change-place-turned', { ...place, turn });
}

/** Of a piece that is new or gone as a whole, its size says enough. */
function isWhole(name: string, among: readonly string[]): boolean {
  const [piece = name] = name.split(':');
  return name === piece || !among.includes(piece);
}

function recutBetween(before: Measurements, after: Measurements): string[] {
  const isCut = (name: string): boolean => !/: (?:place|pieces)$/u.test(name);
  const touched = Object.keys(after).filter((name) => isCut(name) && before[name] !== after[name]);
  return [...new Set(touched.map((name) => name.split(':')[0] ?? name))];
}

type Steps = PublishedState['steps'];

function stepChanges(before: Steps, after: Steps, say: Say): string[] {
  const sentences: string[] = [];
  const old = [...before];
  const take = (matches: (step: Steps[number]) => boolean): Steps[number] | undefined => {
    const index = old.findIndex(matches);
    return index < 0 ? undefined : old.splice(index, 1)[0];
  };
  const unmatched: Steps[number][] = [];
  for (const step of after) {
    const same = take(({ title }) => title === step.title);
    if (!same) unmatched.push(step);
    else if (same.words !== step.words) sentences.push(say('change-step-reworded', { step: step.title }));
  }
  for (const step of unmatched) {
    const renamed = take(({ words }) => words === step.words && words !== '');
    sentences.push(
      renamed
        ? say('change-step-renamed', { before: renamed.title, after: step.title })
        : say('change-step-new', { step: step.title }),
    );
  }
  const order = (steps: Steps): string => steps.map(({ title }) => title).join('\n');
  const kept = before.filter((step) => !old.includes(step));
  const stayed = after.filter((step) => kept.some(({ title }) => title === step.title));
  const stayedBefore = kept.filter((step) => stayed.some(({ title }) => title === step.title));
  if (order(stayed) !== order(stayedBefore)) sentences.push(say('change-steps-order'));
  return [...sentences, ...old.map(({ title }) => say('change-step-gone', { step: title }))];
}
