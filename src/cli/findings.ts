import type { Finding } from '../proof/finding.ts';

/** Whether findings make a command fail: errors do; warnings too under `--strict`. */
export function isFailure(findings: readonly Finding[], strict: boolean): boolean {
  return findings.some(({ severity }) => severity === 'error' || (strict && severity === 'warning'));
}
