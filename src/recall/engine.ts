import { versions } from 'node:process';

/** What an engine is asked for, in flags of its own. */
type EngineFlags = {
  /**
   * That a function runs several times longer than usual before machine code is made of it. Within seconds, what is made
   * earlier seldom pays for itself; it took a fifth of a make, and as much of the tests.
   */
  readonly patient: string;
  /**
   * That memory is cleared away as soon as it takes as much again as what is needed, instead of up to four times that: of
   * what a long make draws nearly all is soon forgotten.
   */
  readonly tidy: string;
  /** That code stays which has not run for a while: it is kept for the next start. */
  readonly lasting: string;
  /** That a pattern of text runs so many times before machine code is made of it: ours are large, and most run a few times. */
  readonly unhurried: string;
};

const ALL = {
  tidy: '--heap-growing-percent=100',
  lasting: '--no-flush-bytecode',
  unhurried: '--regexp-tier-up-ticks=50',
};

/** Of Node 20, 22 and 24. */
const FLAGS: Readonly<Partial<Record<string, EngineFlags>>> = {
  '11.3': { patient: '--interrupt-budget=600000', ...ALL },
  '12.4': { patient: '--invocation-count-for-turbofan=12000', ...ALL },
  '13.6': { patient: '--invocation-count-for-turbofan=12000', ...ALL },
};

/** The flags of an engine; undefined for one that we do not know, since it complains aloud of a flag that it does not know. */
export function flagsOf(v8: string = versions.v8): EngineFlags | undefined {
  return FLAGS[v8.split('.', 2).join('.')];
}
