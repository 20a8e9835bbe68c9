import type {
  PieceChange,
  PublishedFact,
  PublishedState,
  PublishedThing,
  PublishedValue,
  StepChange,
} from '../project/ledger/ledger.ts';
import { isSame, keyOf, sheetKey } from './state.ts';

/** Compares what was published with what is there now; nothing when nothing that counts has changed. */
export function changesBetween(before: PublishedState, after: PublishedState): (PieceChange | StepChange)[] {
  return [...pieceChanges(before.pieces, after.pieces), ...stepChanges(before.steps, after.steps)];
}

type Facts = readonly PublishedFact[];

function pieceChanges(was: Facts, is: Facts): PieceChange[] {
  const [before, after] = [spread(was, is), spread(is, was)];
  const old = new Map(before.map((fact) => [keyOf(fact), fact]));
  const now = new Set(after.map(keyOf));
  const changed = after.flatMap((fact) => {
    const was = old.get(keyOf(fact));
    return was && !isSame(was, fact)
      ? [{ ...thingIn(fact), before: valueIn(was), after: valueIn(fact) }]
      : [];
  });
  const added = after.filter((fact) => !old.has(keyOf(fact)));
  const gone = before.filter((fact) => !now.has(keyOf(fact)));
  return [
    ...changed,
    ...worthSaying(added, before).map((fact) => ({ ...thingIn(fact), after: valueIn(fact) })),
    ...worthSaying(gone, after).map((fact) => ({ ...thingIn(fact), before: valueIn(fact) })),
  ];
}

/** What was common to all variants, for each of those that the others know apart. */
function spread(facts: Facts, others: Facts): Facts {
  const common = (fact: PublishedFact): string => keyOf({ ...fact, variant: undefined });
  return facts.flatMap((fact): Facts => {
    const apart = others.filter(({ variant }) => variant !== undefined && fact.variant === undefined);
    const alike = apart.filter((other) => common(other) === keyOf(fact));
    return alike.length > 0 ? alike.map(({ variant }) => ({ ...fact, variant })) : [fact];
  });
}

/** Of a sheet that is new or gone as a whole, its size says enough. Its cuts were not always recorded. */
function worthSaying(facts: Facts, others: Facts): Facts {
  const there = new Set(others.map(sheetKey));
  return facts.filter((fact) => fact.what === 'size' || (there.has(sheetKey(fact)) && fact.what !== 'cuts'));
}

function thingIn({ piece, sheet, variant, what, from }: PublishedFact): PublishedThing {
  return { piece, sheet, variant, what, from };
}

function valueIn({ word, turn, centered, count, inch, metric }: PublishedFact): PublishedValue {
  return { word, turn, centered, count, inch, metric };
}

type Steps = PublishedState['steps'];

function stepChanges(before: Steps, after: Steps): StepChange[] {
  const changes: StepChange[] = [];
  const old = [...before];
  const take = (matches: (step: Steps[number]) => boolean): Steps[number] | undefined => {
    const index = old.findIndex(matches);
    return index < 0 ? undefined : old.splice(index, 1)[0];
  };
  const unmatched: Steps[number][] = [];
  for (const step of after) {
    const { title } = step;
    const same = take((other) => other.title === title);
    if (!same) unmatched.push(step);
    else if (same.words !== step.words) changes.push({ steps: 'reworded', before: title, after: title });
  }
  for (const { title, words } of unmatched) {
    const renamed = take((other) => other.words === words && words !== '');
    changes.push(
      renamed ? { steps: 'renamed', before: renamed.title, after: title } : { steps: 'new', after: title },
    );
  }
  const kept = before.filter((step) => !old.includes(step));
  // The steps that kept their titles stand in another order.
  if (titlesIn(kept, after) !== titlesIn(after, kept)) changes.push({ steps: 'reordered' });
  return [...changes, ...old.map(({ title }): StepChange => ({ steps: 'gone', before: title }))];
}

/** The titles that others have too, in their order. */
function titlesIn(steps: Steps, others: Steps): string {
  const titles = steps.map(({ title }) => title);
  return titles.filter((title) => others.some((other) => other.title === title)).join('\n');
}
