import type { Setting } from '../handout/setting.ts';
import { supplyWords } from '../handout/supplies.ts';
import type { Project, Supply } from '../project/model.ts';
import { supplyCalled } from '../project/supply-names.ts';

/** What is laid out, and whether that is in order of use: each with the number of the step that first needs it. */
type Table = { readonly isOrdered: boolean; readonly rows: readonly object[] };

/**
 * The supplies by the steps that say what they use, those of which none does behind them. Where no step says so, they lie
 * as the demonstrator lists them: words in the steps tell nothing that can be relied on.
 */
export function laidOut(setting: Setting): Table {
  const { project } = setting;
  const isOrdered = project.steps.some(({ uses }) => uses.length > 0);
  const first = project.supplies.map((supply) => ({ supply, step: firstUse(supply, project) }));
  const rows = isOrdered ? first.toSorted((a, b) => a.step - b.step) : first;
  return {
    isOrdered,
    rows: rows.map(({ supply, step }) => ({
      ...supplyWords(setting, supply),
      step: isOrdered && Number.isFinite(step) ? step + 1 : undefined,
    })),
  };
}

/** The first step that uses a supply, by its place; infinite where none says so. */
function firstUse(supply: Supply, { steps, supplies }: Project): number {
  const place = steps.findIndex(({ uses }) =>
    uses.some(({ value }) => supplyCalled(supplies, value) === supply),
  );
  return place < 0 ? Number.POSITIVE_INFINITY : place;
}
