/** The greatest whole number that divides both; the other where one is 0. Neither is negative. */
export function gcd(a: bigint, b: bigint): bigint {
  return b === 0n ? a : gcd(b, a % b);
}

/** Texts in the order of their code units, for `sort`: the same in every language. */
export function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
