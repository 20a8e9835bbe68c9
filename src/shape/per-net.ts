/**
 * Works something out of a net, or of one that is folded, once: many ask for the same. What else it is told is the same
 * for it each time.
 */
export function perNet<Of extends object, More extends readonly unknown[], T extends object>(
  work: (of: Of, ...more: More) => T,
): (of: Of, ...more: More) => T {
  const known = new WeakMap<Of, T>();
  return (of, ...more) => {
    const before = known.get(of);
    if (before) return before;
    const result = work(of, ...more);
    known.set(of, result);
    return result;
  };
}
