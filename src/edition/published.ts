import type { Length } from '../measure/length.ts';
import type { EditionName } from '../measure/ruler-unit.ts';
import type { Piece, Project } from '../project/model.ts';
import type { Numbers, Options } from './candidates.ts';
import type { SettledLength } from './editions.ts';
import { keyOf, type Primary } from './primaries.ts';

/**
 * What was published of each piece in an edition, by its primary lengths in the other: people have cut by it, so that it
 * stays as long as it is sound, whatever a search would find now. Of a shared piece it may be what another project published.
 */
export function publishedNumbers(project: Project, edition: EditionName): ReadonlyMap<string, Numbers> {
  const { ledger, takenOver, variant } = project;
  const from = edition === 'inch' ? 'metric' : 'inch';
  const pieces = new Map<string, Map<string, Length>>();
  for (const settled of [...(ledger.state?.settled ?? []), ...takenOver]) {
    if (settled.variant !== variant?.id.value) continue;
    const numbers = pieces.get(settled.piece) ?? new Map<string, Length>();
    settled[from].forEach((own, index) => {
      const to = settled[edition][index];
      if (to) numbers.set(keyOf(own, settled.kind), to);
    });
    pieces.set(settled.piece, numbers);
  }
  return pieces;
}

/** Each length as it was published; one that is new is rounded. Undefined where nothing of it was published. */
export function withPublished(options: readonly Options[], published: Numbers): Numbers | undefined {
  if (!options.some(({ key }) => published.has(key))) return undefined;
  return new Map(
    options.flatMap(({ key, choices }) => {
      const to = published.get(key) ?? choices[0]?.to;
      return to ? [[key, to] as const] : [];
    }),
  );
}

/** What was chosen for a piece, to be published. */
export function settledOf(
  piece: Piece,
  primaries: readonly Primary[],
  numbers: Numbers,
  to: Project,
): readonly SettledLength[] {
  return primaries.flatMap(({ key, kind, own }) => {
    const other = numbers.get(key);
    if (!other) return [];
    const twin = to.unit === 'in' ? { inch: other, metric: own } : { inch: own, metric: other };
    return { piece: piece.id.value, kind, ...twin };
  });
}
