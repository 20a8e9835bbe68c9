import type { Net } from './net.ts';

/** Works something out of a net once: many ask for the same. What else it is told is the same for a net each time. */
export function perNet<More extends readonly unknown[], T extends object>(
  work: (net: Net, ...more: More) => T,
): (net: Net, ...more: More) => T {
  const known = new WeakMap<Net, T>();
  return (net, ...more) => {
    const result = known.get(net) ?? work(net, ...more);
    known.set(net, result);
    return result;
  };
}
