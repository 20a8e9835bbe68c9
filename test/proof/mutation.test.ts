import { describe, expect, it } from 'vitest';
import { answerTo, type Mutant, mutantsOf } from './mutation/mutants.ts';
import { KINDS, type Kind } from './mutation/mutations.ts';
import { REASONS, reasonsFor } from './mutation/reasons.ts';
import { SecondOpinion } from './mutation/second-opinion.ts';
import { gatherSpecimens } from './mutation/specimens.ts';

const specimens = await gatherSpecimens();
const rightOnes = new Map(specimens.map((specimen) => [specimen, new SecondOpinion(specimen.net)]));
const mutants = specimens.flatMap(mutantsOf);
const isTold = ({ objection, notes }: Mutant): boolean => objection !== undefined || notes.length > 0;

/** Slips of which nothing is told, each with the reasons why, and what speaks against them when it is folded another way. */
const survivors = mutants
  .filter((mutant) => !isTold(mutant))
  .map((mutant) => {
    const after = new SecondOpinion(mutant.net);
    const before = rightOnes.get(mutant.of) ?? after;
    const reasons = reasonsFor(mutant);
    const against = reasons.flatMap((reason) => reason.against({ ...mutant, before, after }));
    const name = `${mutant.kind} of ${mutant.of.name}: ${mutant.slip}`;
    return { name, reasons, against: [...after.flaws(), ...against] };
  });

/**
 * How many slips of each kind the proof tells of, out of how many that are made: in an error or a warning, and at least
 * in a note: of a wall of a tray that stands more than two grooves higher than the others no more, for a front or a back
 * of its own height is a right one. Numbers and no shares, which fall with every form whose flaps may be longer. What it
 * is silent on does no harm, as the tests below see.
 */
const LEAST: Readonly<Record<Kind, readonly [number, number, number]>> = {
  'moved line': [390, 335, 360],
  'wrong mate': [1060, 1050, 1050],
  'missing glue': [112, 112, 112],
  'reversed fold': [420, 420, 420],
  'longer flap': [190, 25, 40],
  'far too long flap': [190, 135, 150],
};

describe('every net of the demo projects and of the forms', () => {
  it.each(specimens)('folds without a finding as it is: $name', (specimen) => {
    expect(answerTo(specimen, specimen.net)).toEqual({ notes: [] });
    expect(rightOnes.get(specimen)?.flaws()).toEqual([]);
  });
});

describe.each(KINDS)('a single slip in a right net: %s', (kind) => {
  const made = mutants.filter((each) => each.kind === kind);
  const [least, inEarnest, atAll] = LEAST[kind];

  it('is made in many nets', () => {
    expect(made.length).toBeGreaterThanOrEqual(least);
  });

  it(`is told of in ${atAll} cases at least`, () => {
    expect(made.filter(({ objection }) => objection).length).toBeGreaterThanOrEqual(inEarnest);
    expect(made.filter(isTold).length).toBeGreaterThanOrEqual(atAll);
  });
});

describe('a slip of which nothing is told', () => {
  it('has a reason why it does no harm', () => {
    expect(survivors.filter(({ reasons }) => reasons.length === 0).map(({ name }) => name)).toEqual([]);
  });

  it.each(REASONS)('does none when it is folded another way: $why', (reason) => {
    const own = survivors.filter(({ reasons }) => reasons.includes(reason));
    expect(own).not.toEqual([]);
    expect(own.filter(({ against }) => against.length > 0)).toEqual([]);
  });
});

describe('the other folding', () => {
  it('finds flaws of its own in slips, and none of which nothing is told', () => {
    const reversed = mutants.filter(({ kind }) => kind === 'reversed fold');
    const flawed = reversed.filter(({ net }) => new SecondOpinion(net).flaws().length > 0);
    expect(flawed.length).toBeGreaterThan(100);
    expect(flawed.filter((mutant) => !isTold(mutant))).toEqual([]);
  });

  it('speaks against the reason for a longer tab when it is longer than its mate', () => {
    const tabs = mutants.filter(({ kind, slip }) => kind === 'far too long flap' && slip === 'tab');
    expect(tabs.length).toBeGreaterThan(5);
    for (const mutant of tabs) {
      const after = new SecondOpinion(mutant.net);
      const before = rightOnes.get(mutant.of) ?? after;
      const against = reasonsFor(mutant).flatMap((reason) => reason.against({ ...mutant, before, after }));
      expect(against.join('; ')).toMatch(/mm2 of tab lie beside/u);
    }
  });
});
