import { flatFoldsMissing } from '../../shape/closure/folded-corner.ts';
import { missingSlits } from '../../shape/closure/missing-slits.ts';
import { brokenRings } from '../../shape/closure/sound.ts';
import { tornStrip } from '../../shape/closure/torn-strip.ts';
import type { Fold } from '../../shape/net.ts';
import { foldedSheets, writtenSlits } from '../folded-sheets.ts';
import type { Rule } from '../rule.ts';
import { sayList } from '../words.ts';

/** All that hangs together in a sheet: most often it is a whole list that was left out. */
type Facts = {
  readonly sheet: string;
  /** Every two panels a slit is to part. */
  readonly pairs: readonly (readonly [string, string])[];
  /** The slits, as they would be written; none where a form made the sheet. */
  readonly slits: readonly string[];
  /** The lines that are to be folded flat instead, where a corner folds in. */
  readonly flat: readonly string[];
};

export const missingSlit: Rule<Facts> = {
  severity: 'error',
  summary: 'Where score lines cross, the paper is slit so that it can fold.',
  why: 'Four panels around one corner cannot all fold up: paper does not stretch. One of the lines between them must be a cut. If it is missing from the list, you find out only when the flaps will not fold.',
  fails: { box: { slit: 'A|B 1-2, B|C 1-2, C|D 1-2, B|C 4, C|D 4' }, blames: 'box' },
  passes: { box: {} },
  *check(context) {
    for (const sheet of foldedSheets(context)) {
      const { at, body, name, shape, caliper } = sheet;
      const broken = brokenRings(shape);
      if (broken.length === 0 || tornStrip(shape)) continue;
      const flat = body.kind === 'net' ? flatFoldsMissing(shape, caliper) : [];
      const cut = flat.length > 0 ? [] : missingSlits(shape, caliper);
      const pairs = (cut.length > 0 ? cut : broken).map(({ panels }) => panels);
      const facts = { sheet: name, pairs, slits: writtenSlits(sheet, cut), flat: flat.map(sayFlat) };
      yield { at, facts };
    }
  },
  say: ({ sheet, pairs, slits, flat }) => {
    const [first, ...others] = pairs.map((pair) => sayList(pair));
    const slit = slits.length > 0 ? `add "${slits.join(', ')}" under "slit:"` : 'slit the line between them';
    return {
      message:
        others.length === 0
          ? `${first} of ${sheet} are still joined, so the panels around that corner cannot fold`
          : `these panels of ${sheet} are still joined and must be cut apart for their corners to fold: ${[first, ...others].join('; ')}`,
      remedy:
        flat.length > 0
          ? `say "${flat.join(', ')}" under "folds:", so that the paper folds in around the corner`
          : `${slit}, or trim off what is waste`,
    };
  },
};

function sayFlat({ panels, direction }: Pick<Fold, 'panels' | 'direction'>): string {
  return `${panels.join('|')}: ${direction} 180`;
}
