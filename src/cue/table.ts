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
  const uses = usesOf(project);
  const isOrdered = uses.length > 0;
  const first = project.supplies.map((supply) => ({ supply, use: firstUse(supply, uses) }));
  const rows = isOrdered ? first.toSorted((a, b) => a.use - b.use) : first;
  return {
    isOrdered,
    rows: rows.map(({ supply, use }) => ({
      ...supplyWords(setting, supply),
      step: isOrdered ? uses[use]?.step : undefined,
    })),
  };
}

/** Everything that the steps say they use, one after the other, with the number of the step. */
function usesOf({ steps, supplies }: Project): readonly Use[] {
  return steps.flatMap((step, index) =>
    step.uses.map(({ value }) => ({ step: index + 1, supply: supplyCalled(supplies, value) })),
  );
}

type Use = { readonly step: number; readonly supply: Supply | undefined };

/** The place of a supply among all that is used; behind them where no step says so. */
function firstUse(supply: Supply, uses: readonly Use[]): number {
  const place = uses.findIndex((use) => use.supply === supply);
  return place < 0 ? uses.length : place;
}
