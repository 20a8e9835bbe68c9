import { existsSync } from 'node:fs';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * The longest test files, so that no worker is left alone with one at the end. The first asks for the demo, and makes it
 * while the next ones, which don't need it, are at work; those that do come after them.
 */
const LONGEST: readonly string[] = [
  'print/pages',
  'kit/fewest-sheets',
  'preview/preview',
  'make/make',
  'kit/plans',
  'kit/season',
  'make/redraft',
  'make/inputs',
  'kit/small-plans',
  'site/crawl',
  'make/cue-card',
  'edition/random',
  'make/pictures',
  'make/units',
  'print/processes',
  'site/look',
  'page/turn',
  'page/table',
  'site/list',
  'make/template',
  'make/interrupted',
  'ordeal/ordeal',
];

function placeOf({ moduleId }: TestSpecification): number {
  const place = LONGEST.findIndex((name) => moduleId.endsWith(`/test/${name}.test.ts`));
  return place < 0 ? LONGEST.length : place;
}

/** Test files in the order in which workers take them. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const gone = LONGEST.filter((name) => !existsSync(new URL(`${name}.test.ts`, import.meta.url)));
    if (gone.length > 0) throw new Error(`test/order.ts names tests that are not there: ${gone.join(', ')}`);
    const others = await super.sort(files);
    return others.toSorted((one, other) => placeOf(one) - placeOf(other));
  }
}
