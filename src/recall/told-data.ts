import type { SourceFile } from '../project/source.ts';
import type { Told } from '../proof/told.ts';

type ToldPlace = Told['at'];
type PlaceData = readonly [path: string, start: number, end: number];
type ToldNote = Told['notes'][number];

/** A finding in words as plain data: files by their paths. */
export type ToldData = Omit<Told, 'at' | 'notes'> & {
  readonly at: PlaceData;
  readonly notes: readonly (Omit<ToldNote, 'at'> & { readonly at: PlaceData })[];
};

export function writeTold({ at, notes, ...words }: Told): ToldData {
  return { ...words, at: writePlace(at), notes: notes.map((note) => ({ ...note, at: writePlace(note.at) })) };
}

/** @param files The files as they are now, by their paths. */
export function readTold({ at, notes, ...words }: ToldData, files: ReadonlyMap<string, SourceFile>): Told {
  const placeOf = ([path, start, end]: PlaceData): ToldPlace => {
    const file = files.get(path);
    if (!file) throw new Error(`${path} is not among the files a finding was recalled with`);
    return { file, start, end };
  };
  return { ...words, at: placeOf(at), notes: notes.map((note) => ({ ...note, at: placeOf(note.at) })) };
}

function writePlace({ file, start, end }: ToldPlace): PlaceData {
  return [file.path, start, end];
}

/** Every file a finding points into. */
export function filesOf({ at, notes }: Told): readonly SourceFile[] {
  return [at.file, ...notes.map((note) => note.at.file)];
}
