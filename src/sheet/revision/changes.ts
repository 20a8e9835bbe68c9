import type { PublishedState } from '../../project/ledger.ts';

/** What changed between two states, in sentences, and the pieces to cut again. */
export type Changes = { readonly changes: readonly string[]; readonly recut: readonly string[] };

/** Compares what was published with what is there now; nothing when nothing that counts has changed. */
export function changesBetween(before: PublishedState, after: PublishedState): Changes {
  return {
    changes: [
      ...measurementChanges(before.measurements, after.measurements),
      ...stepChanges(before.steps, after.steps),
    ],
    recut: recutBetween(before.measurements, after.measurements),
  };
}

type Measurements = PublishedState['measurements'];

function measurementChanges(before: Measurements, after: Measurements): string[] {
  const added = Object.keys(after).filter((name) => !(name in before));
  const changed = Object.keys(after).filter((name) => name in before && before[name] !== after[name]);
  const removed = Object.keys(before).filter((name) => !(name in after));
  return [
    ...changed.map((name) => {
      const [was, is] = / scores /u.test(name) ? ['were', 'are'] : ['was', 'is'];
      return `${spoken(name)} ${was} ${before[name]}, ${is} ${after[name]}`;
    }),
    ...added.filter((name) => isWhole(name, added)).map((name) => `${spoken(name)} is new: ${after[name]}`),
    ...removed
      .filter((name) => isWhole(name, removed))
      .map((name) => `${spoken(name)} is gone: it was ${before[name]}`),
  ];
}

/** `the place of front` of `front: place`. */
function spoken(name: string): string {
  const [piece = name, aspect] = name.split(': ');
  return aspect === undefined ? piece : `the ${aspect} of ${piece}`;
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

function stepChanges(before: Steps, after: Steps): string[] {
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
    else if (same.words !== step.words) sentences.push(`step “${step.title}” is reworded`);
  }
  for (const step of unmatched) {
    const renamed = take(({ words }) => words === step.words && words !== '');
    sentences.push(
      renamed ? `step “${renamed.title}” is now called “${step.title}”` : `step “${step.title}” is new`,
    );
  }
  const order = (steps: Steps): string => steps.map(({ title }) => title).join('\n');
  const kept = before.filter((step) => !old.includes(step));
  const stayed = after.filter((step) => kept.some(({ title }) => title === step.title));
  const stayedBefore = kept.filter((step) => stayed.some(({ title }) => title === step.title));
  if (order(stayed) !== order(stayedBefore)) sentences.push('the steps are in another order');
  return [...sentences, ...old.map(({ title }) => `step “${title}” is gone`)];
}
