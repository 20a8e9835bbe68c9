import { Length } from '../measure/length.ts';
import type { LinearForm, WholeNumberProblem } from './whole-numbers.ts';

/** One number of an edition: what it was, and everything it is called on the sheet. */
export type Quantity = {
  readonly own: Length;
  readonly names: readonly string[];
  /** How many of its steps make one of the edition's: 2 for a reveal that may be a half. */
  readonly parts: 1 | 2;
};

/**
 * How much is kept equal: every two lengths that were; or lengths among lengths and reveals among reveals; or that,
 * with centred reveals that may lie on half a step.
 */
export type Strictness = 'all' | 'reveals apart' | 'half reveals';

/** Lengths on the left equal (or are at least) a whole number of steps. */
export type Relation = {
  readonly terms: readonly { readonly quantity: number; readonly coefficient: number }[];
  readonly constant?: number;
};

/** Coarser than this no comparison of deviations needs to be; only reached by odd fractions such as sevenths. */
const FINEST_SCALE = 100_000n;

/**
 * The numbers of a project that an edition has to find, and the relations between them. Lengths of the same value
 * are the same quantity, so they stay equal; what need not be equal to its namesakes is added apart.
 */
export class Quantities {
  readonly strictness: Strictness;
  readonly #step: Length;
  readonly #quantities: { own: Length; names: string[]; parts: 1 | 2 }[] = [];
  readonly #byValue = new Map<string, number>();
  readonly #equalities: Relation[] = [];
  readonly #atLeast: Relation[] = [];

  constructor(step: Length, strictness: Strictness) {
    this.#step = step;
    this.strictness = strictness;
  }

  /** The quantity of a value; the same for every length of that value. */
  of(own: Length, name: string): number {
    return this.#shared(`${own}`, own, name, 1);
  }

  /** The quantity of a reveal or a distance from an edge. */
  reveal(own: Length, name: string): number {
    return this.strictness === 'all' ? this.of(own, name) : this.#shared(`reveal ${own}`, own, name, 1);
  }

  /** Twice the reveal of a layer that lies centred, where that may be an odd number of half steps. */
  doubledReveal(own: Length, name: string): number {
    return this.#shared(`centred reveal ${own}`, own, name, 2);
  }

  /** A quantity of its own, whatever else has this value. */
  apart(own: Length, name: string, parts: 1 | 2 = 1): number {
    this.#quantities.push({ own, names: [name], parts });
    return this.#quantities.length - 1;
  }

  #shared(key: string, own: Length, name: string, parts: 1 | 2): number {
    const known = this.#byValue.get(key);
    if (known !== undefined) {
      this.#name(known, name);
      return known;
    }
    const added = this.apart(own, name, parts);
    this.#byValue.set(key, added);
    return added;
  }

  equal(relation: Relation): void {
    this.#equalities.push(relation);
  }

  atLeast(relation: Relation): void {
    this.#atLeast.push(relation);
  }

  /** A quantity that must not fall under a length. */
  keepOver(quantity: number, least: Length): void {
    const { numerator, denominator } = least.over(this.#step);
    const steps = Number((numerator + denominator - 1n) / denominator);
    this.atLeast({ terms: [{ quantity, coefficient: 1 }], constant: steps });
  }

  /** A quantity that must not pass a length. */
  keepUnder(quantity: number, most: Length): void {
    const { numerator, denominator } = most.over(this.#step);
    this.atLeast({ terms: [{ quantity, coefficient: -1 }], constant: -Number(numerator / denominator) });
  }

  get all(): readonly Quantity[] {
    return this.#quantities;
  }

  /** The quantity that stands for a value, if any does. */
  find(own: Length, kind: 'length' | 'reveal' = 'length'): number | undefined {
    if (kind === 'reveal' && this.strictness !== 'all') return this.#byValue.get(`reveal ${own}`);
    return this.#byValue.get(`${own}`);
  }

  /** The search this comes to, no value farther than `reach` from what it was. */
  problem(reach: Length): WholeNumberProblem {
    const ratios = this.#quantities.map(({ own, parts }) => own.times(parts).over(this.#step));
    const scale = ratios.reduce((least, { denominator }) => {
      const common = leastCommonMultiple(least, denominator);
      return common > FINEST_SCALE ? least : common;
    }, 1n);
    const far = reach.over(this.#step);
    return {
      scale: Number(scale),
      targets: ratios.map(({ numerator, denominator }) => Number((numerator * scale) / denominator)),
      weights: this.#quantities.map(({ parts }) => 2 / parts),
      reach: Number((2n * far.numerator * scale) / far.denominator),
      equalities: this.#equalities.map(linear),
      atLeast: [...this.#atLeast, ...this.#inOrder(), ...this.#positive()].map(linear),
    };
  }

  /** What the values of a search make of each quantity. */
  lengths(values: readonly number[]): readonly (Length | undefined)[] {
    return this.#quantities.map(({ parts }, index) => {
      const value = values[index];
      return value === undefined ? undefined : this.#step.times(value, parts);
    });
  }

  /** What was no longer than another stays so. */
  #inOrder(): Relation[] {
    const whole = [...this.#byValue.values()].filter((each) => this.#quantities[each]?.parts === 1);
    const rising = whole.sort((a, b) => this.own(a).compare(this.own(b)));
    return rising.slice(1).map((longer, index) => ({
      terms: [
        { quantity: longer, coefficient: 1 },
        { quantity: rising[index] ?? longer, coefficient: -1 },
      ],
    }));
  }

  /** What was there at all stays there: no setting becomes zero because it is finer than the ruler. */
  #positive(): Relation[] {
    return this.#quantities.flatMap(({ own }, quantity) =>
      own.sign > 0 ? [{ terms: [{ quantity, coefficient: 1 }], constant: 1 }] : [],
    );
  }

  /** What a quantity is in the project as written. */
  own(quantity: number): Length {
    return this.#quantities[quantity]?.own ?? Length.zero;
  }

  #name(quantity: number, name: string): void {
    const names = this.#quantities[quantity]?.names;
    if (names && !names.includes(name)) names.push(name);
  }
}

/** One term a quantity, so that bounds drawn from a relation are as tight as they can be. */
function linear({ terms, constant = 0 }: Relation): LinearForm {
  const sums = new Map<number, number>();
  for (const { quantity, coefficient } of terms) {
    sums.set(quantity, (sums.get(quantity) ?? 0) + coefficient);
  }
  return {
    terms: [...sums].map(([variable, coefficient]) => ({ variable, coefficient })),
    constant,
  };
}

function leastCommonMultiple(a: bigint, b: bigint): bigint {
  let [x, y] = [a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return (a / x) * b;
}
