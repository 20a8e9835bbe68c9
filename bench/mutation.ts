/**
 * Prints what the proof says of every right net with one slip in it, and which slips nothing objects to:
 * `node bench/mutation.ts` (Node 22.18 or later, which runs TypeScript as it is).
 */
import { mutantsOf } from '../test/proof/mutation/mutants.ts';
import { KINDS } from '../test/proof/mutation/mutations.ts';
import { gatherSpecimens } from '../test/proof/mutation/specimens.ts';

const mutants = (await gatherSpecimens()).flatMap(mutantsOf);
for (const kind of KINDS) {
  const made = mutants.filter((each) => each.kind === kind);
  const caught = made.filter(({ objection }) => objection).length;
  const noted = made.filter(({ objection, notes }) => !objection && notes.length > 0).length;
  const share = ((100 * caught) / made.length).toFixed(1);
  console.log(`${kind}: ${made.length} made, ${caught} caught (${share} %), ${noted} only noted`);
}
for (const { kind, slip, of, objection, notes } of mutants) {
  if (objection) continue;
  console.log(`${kind} | ${of.name} | ${slip}${notes.length > 0 ? ` | noted: ${notes.join(', ')}` : ''}`);
}
