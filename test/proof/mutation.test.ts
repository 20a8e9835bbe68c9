import { describe, expect, it } from 'vitest';
import { answersTo, type Mutant, mutantsOf } from './mutation/mutants.ts';
import { KINDS, type Kind } from './mutation/mutations.ts';
import { REASONS, reasonsFor } from './mutation/reasons.ts';
import { SecondOpinion } from './mutation/second-opinion.ts';
import { gatherSpecimens } from './mutation/specimens.ts';

const specimens = await gatherSpecimens();
const rightOnes = new Map(specimens.map((specimen) => [specimen, new SecondOpinion(specimen.net)]));
const mutants = specimens.flatMap(mutantsOf);
const isTold = ({ objections, notes }: Mutant): boolean => objections.length + notes.length > 0;

/** What speaks against every reason that is given for a slip of which nothing is told. */
const survivors = mutants
  .filter((mutant) => !isTold(mutant))
  .map((mutant) => {
    const after = new SecondOpinion(mutant.net);
    const before = rightOnes.get(mutant.of) ?? after;
    const reasons = reasonsFor(mutant);
    const against = reasons.flatMap((reason) => reason.against({ ...mutant, before, after }));
    const flaws = reasons.length > 0 ? [...after.flaws(), ...against] : ['no reason is given'];
    return { ...mutant, name: `${mutant.kind} of ${mutant.of.name}: ${mutant.slip}`, reasons, flaws };
  });

/**
 * How many slips of each kind are made, and what share is told of: of all, in an error or a warning; of all; of those
 * that do harm.
 */
const LEAST: Readonly<Record<Kind, readonly [number, number, number, number]>> = {
  'moved line': [290, 0.81, 0.9, 1],
  'wrong mate': [600, 0.98, 0.98, 0.98],
  'missing glue': [75, 1, 1, 1],
  'reversed fold': [260, 0.98, 0.99, 0.99],
  'longer flap': [150, 0.23, 0.23, 0.87],
  'far too long flap': [150, 0.8, 0.8, 0.94],
};

describe('every net of the demo projects and of the forms', () => {
  it.each(specimens)('folds without a finding as it is: $name', (specimen) => {
    expect(answersTo(specimen, specimen.net)).toEqual({ objections: [], notes: [] });
    expect(rightOnes.get(specimen)?.flaws()).toEqual([]);
  });
});

describe.each(KINDS)('a single slip in a right net: %s', (kind) => {
  const made = mutants.filter((each) => each.kind === kind);
  const caught = made.filter(({ objections }) => objections.length > 0).length;
  const told = made.filter(isTold).length;
  const harmless = survivors.filter((each) => each.kind === kind && each.flaws.length === 0).length;
  const [least, ...shares] = LEAST[kind];
  const reached = [caught / made.length, told / made.length, told / (made.length - harmless)];

  it('is made in many nets', () => {
    expect(made.length).toBeGreaterThanOrEqual(least);
  });

  it(`is caught in ${shares.map((share) => Math.round(share * 100)).join(', ')} of 100 cases`, () => {
    for (const [index, share] of shares.entries()) expect(reached[index]).toBeGreaterThanOrEqual(share);
  });
});

describe('a reason why a slip does no harm', () => {
  it.each(REASONS)('is true when it is folded another way: $why', (reason) => {
    const own = survivors.filter(({ reasons }) => reasons.includes(reason));
    expect(own.filter(({ flaws }) => flaws.length === 0)).not.toEqual([]);
  });
});

describe('the other folding', () => {
  it('finds flaws of its own in slips, and none of which nothing is told', () => {
    const reversed = mutants.filter(({ kind }) => kind === 'reversed fold');
    const flawed = reversed.filter(({ net }) => new SecondOpinion(net).flaws().length > 0);
    expect(flawed.length).toBeGreaterThan(100);
    expect(flawed.filter((mutant) => !isTold(mutant))).toEqual([]);
  });
});
