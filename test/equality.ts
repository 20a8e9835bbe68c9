import { expect } from 'vitest';
import { Length } from '../src/measure/length.ts';

// A length keeps its number to itself, so that any two would pass for equal where vitest compares what they show.
expect.addEqualityTesters([
  (one, other) => {
    if (!(one instanceof Length)) return other instanceof Length ? false : undefined;
    return other instanceof Length && one.equals(other);
  },
]);
