/** A label that would like to stand at `at` and takes up `size` along the line. */
type Spreadable = { readonly at: number; readonly size: number };

type IndexedSpread = Spreadable & { readonly index: number };

/** Labels pushed against one another, and where the middle of them all would like to be. */
type Cluster = { readonly entries: readonly IndexedSpread[]; readonly wanted: number; readonly size: number };

/**
 * Where labels along a line stand so that none touches another: each as near as can be to where it wants to be (least
 * squares), in the order they were in. Given and returned in the caller's order.
 */
export function spread(labels: readonly Spreadable[], gap: number): number[] {
  const entries = labels.map((label, index) => ({ ...label, index }));
  const runs: Cluster[] = [];
  for (const entry of entries.sort((a, b) => a.at - b.at || a.index - b.index)) {
    let run: Cluster = { entries: [entry], wanted: entry.at, size: entry.size };
    for (let before = runs.at(-1); before && overlap(before, run, gap); before = runs.at(-1)) {
      runs.pop();
      run = joined(before, run, gap);
    }
    runs.push(run);
  }
  return placed(runs, gap);
}

function overlap(before: Cluster, after: Cluster, gap: number): boolean {
  return before.wanted + before.size / 2 + gap > after.wanted - after.size / 2;
}

/** The middle of a joined run is where its labels want it on average, each seen from its own offset. */
function joined(before: Cluster, after: Cluster, gap: number): Cluster {
  const size = before.size + gap + after.size;
  const [left, right] = [before.entries.length, after.entries.length];
  const wantedByBefore = before.wanted + (size - before.size) / 2;
  const wantedByAfter = after.wanted - (size - after.size) / 2;
  const wanted = (left * wantedByBefore + right * wantedByAfter) / (left + right);
  return { entries: [...before.entries, ...after.entries], wanted, size };
}

function placed(runs: readonly Cluster[], gap: number): number[] {
  const middles: number[] = [];
  for (const { entries, wanted, size } of runs) {
    let edge = wanted - size / 2;
    for (const { index, size: own } of entries) {
      middles[index] = edge + own / 2;
      edge += own + gap;
    }
  }
  return middles;
}
