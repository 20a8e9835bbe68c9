/**
 * How much a search may do. It is counted in steps and not in time, so that a plan is the same on every machine, however
 * busy. A step is about a microsecond's work on an ordinary machine.
 */
export class Work {
  #left: number;

  constructor(steps: number) {
    this.#left = steps;
  }

  /** Less than 0 where the last thing that was done took more than there was. */
  get left(): number {
    return this.#left;
  }

  spend(steps: number): void {
    this.#left -= steps;
  }
}
