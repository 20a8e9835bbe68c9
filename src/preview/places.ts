import { splitSheet } from '../project/frontmatter.ts';
import type { Project } from '../project/model.ts';
import type { SourceFile } from '../project/source.ts';
import { entriesOf, entryOf } from '../project/yaml/yaml-node.ts';
import { readYaml } from '../project/yaml/yaml-tree.ts';
import type { Work } from '../recall/recall.ts';
import { nameOf } from '../words/names.ts';

/** What a page shows of a part of its sheet: the title, a step by its number, a piece by its name. */
type SourceMark =
  | { readonly kind: 'title' }
  | { readonly kind: 'step'; readonly number: number }
  | { readonly kind: 'piece'; readonly name: string };

/** Where in a sheet something is written that its page shows: offsets, the end not in it. */
export type MarkedPlace = { readonly start: number; readonly end: number; readonly mark: SourceMark };

export const workPlaces: Work<readonly MarkedPlace[]> = async ({ project }) => ({
  data: placesIn(project),
  uses: [],
});

/** What is shown of an offset in a sheet; where a part lies in another, the inner one. */
export function markAt(places: readonly MarkedPlace[], offset: number): SourceMark | undefined {
  return places.findLast(({ start, end }) => start <= offset && offset < end)?.mark;
}

function placesIn({ file, title, steps }: Project): readonly MarkedPlace[] {
  const starts = steps.map((step) => step.title.at.start);
  return [
    { start: title.at.start, end: title.at.end + 1, mark: { kind: 'title' } },
    ...piecesIn(file),
    ...starts.map(
      (start, index): MarkedPlace => ({
        start,
        end: starts[index + 1] ?? file.text.length + 1,
        mark: { kind: 'step', number: index + 1 },
      }),
    ),
  ];
}

/** As they are written: of one that can't be read, the page shows the last that could. */
function piecesIn(file: SourceFile): readonly MarkedPlace[] {
  const { yaml } = splitSheet(file);
  const measurements = yaml && entryOf(readYaml(yaml).root, 'measurements')?.value;
  const pieces = measurements && entryOf(measurements, 'pieces')?.value;
  return entriesOf(pieces).map(({ key, value }) => {
    const name = entryOf(value, 'name')?.value;
    const called = name?.kind === 'text' ? name.text.trim() : nameOf(key.text);
    return { start: key.at.start, end: value.at.end + 1, mark: { kind: 'piece', name: called } };
  });
}
