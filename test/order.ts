import { existsSync } from 'node:fs';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * The longest test files, so that no worker is left alone with one at the end. The first asks for the demo, and makes it
 * while the next ones, which don't need it, are at work; those that do come after them.
 */
const LONGEST: readonly string[] = [
  'print/pages',
  'kit/fewest-sheets',
  'edition/random',
  'kit/season',
  'kit/plans',
  'kit/small-plans',
  'make/make',
  'make/cue-card',
  'preview/preview',
  'make/units',
  'site/look',
  'page/turn',
  'page/table',
  'site/list',
  'print/processes',
  'make/inputs',
  'site/crawl',
  'make/interrupted',
  'ordeal/ordeal',
  'make/template',
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
