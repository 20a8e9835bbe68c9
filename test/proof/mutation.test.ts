import { describe, expect, it } from 'vitest';
import { answersTo, mutantsOf } from './mutation/mutants.ts';
import { KINDS, type Kind } from './mutation/mutations.ts';
import { gatherSpecimens } from './mutation/specimens.ts';

const specimens = await gatherSpecimens();
const mutants = specimens.flatMap(mutantsOf);

/** How many slips of each kind are made, and what share of them is caught, at least. */
const LEAST: Readonly<Record<Kind, readonly [number, number]>> = {
  'moved line': [290, 0.78],
  'wrong mate': [600, 0.93],
  'missing glue': [75, 0],
  'reversed fold': [230, 0.69],
  'longer flap': [150, 0.22],
  'far too long flap': [150, 0.45],
};

describe('every net of the demo projects and of the forms', () => {
  it.each(specimens)('folds without a finding as it is: $name', (specimen) => {
    expect(answersTo(specimen, specimen.net)).toEqual({ objections: [], notes: [] });
  });
});

describe.each(KINDS)('a single slip in a right net: %s', (kind) => {
  const made = mutants.filter((each) => each.kind === kind);
  const caught = made.filter(({ objections }) => objections.length > 0);
  const [least, share] = LEAST[kind];

  it('is made in many nets', () => {
    expect(made.length).toBeGreaterThanOrEqual(least);
  });

  it(`is caught in ${share * 100} of 100 cases at least`, () => {
    expect(caught.length / made.length).toBeGreaterThanOrEqual(share);
  });
});
