import { Length } from '../measure/length.ts';
import type { Finding } from '../project/finding.ts';

/** Two ends of a length may each move by a millimeter and a half from one edition to the other. */
const NO_WORSE: Length = Length.of(3, 1, 'mm');

/**
 * What is found in one edition and not in the other. A finding is in both when a rule says it twice of the same words,
 * and the lengths it tells are about the same: what gets much worse in an edition is another finding. One that is known
 * answers for one alone. What is known is asked for only once there is anything to hold against it.
 */
export function* findOthers(found: Iterable<Finding>, known: () => Iterable<Finding>): Generator<Finding> {
  let left: Finding[] | undefined;
  for (const finding of found) {
    left ??= [...known()];
    const index = left.findIndex((each) => isAgain(finding, each));
    if (index < 0) yield finding;
    else left.splice(index, 1);
  }
}

function isAgain(finding: Finding, known: Finding): boolean {
  if (finding.rule !== known.rule) return false;
  if (finding.at.start !== known.at.start || finding.at.file.path !== known.at.file.path) return false;
  const before = lengthsIn(known.facts);
  return lengthsIn(finding.facts).every((length, index) => {
    const other = before[index];
    return other === undefined || !length.minus(other).abs().greaterThan(NO_WORSE);
  });
}

/** Every length among the facts of a finding, in their order. */
function lengthsIn(facts: unknown): readonly Length[] {
  if (facts instanceof Length) return [facts];
  return typeof facts === 'object' && facts !== null ? Object.values(facts).flatMap(lengthsIn) : [];
}
