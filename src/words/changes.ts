import { type Shown, shownEditions } from '../edition/editions.ts';
import type { EditionName } from '../measure/ruler-unit.ts';
import type { Ledger, PieceChange, PublishedValue, Revision, StepChange } from '../project/ledger/ledger.ts';
import { lengthsChanged } from './change-figures.ts';
import { cornersKey } from './corners.ts';
import { unitIn } from './figures.ts';
import type { Say } from './labels.ts';
import { nameOf, refNamed, sheetNamed } from './names.ts';
import { outlineKey, parametersOf } from './outlines.ts';
import type { SafeHtml } from './safe-html.ts';
import { semicolon } from './typographic.ts';
import type { Voice } from './voice.ts';

/** What changed with a revision, in sentences, and the names of the pieces to cut again. */
export type RevisionWords = { readonly changes: readonly string[]; readonly recut: readonly string[] };

/**
 * Says what changed, in the lengths of each of the editions shown in which it did. What changed only in one that isn't
 * shown is no change to whoever reads it.
 */
export function revisionWords(
  revision: Revision,
  say: Say,
  shown: Shown = shownEditions({ own: revision.own ?? 'inch', printed: 'both' }),
): RevisionWords {
  return {
    changes: changesShown(revision, shown).map((change) => {
      if (typeof change === 'string') return change;
      return isOfPiece(change) ? pieceWords(change, say, shown) : stepWords(change, say);
    }),
    recut: recutNames([revision], say, shown),
  };
}

function changesShown({ changes }: Revision, shown: Shown): Revision['changes'] {
  return changes.filter((change) => !isOfPiece(change) || editionsTold(change, shown).length > 0);
}

/**
 * The pieces to cut again after some revisions, each once: `box`, or `front (mm)` where only the numbers of that edition
 * changed. One that has gone since is cut no more.
 */
function recutNames(revisions: readonly Revision[], say: Say, shown: Shown): readonly string[] {
  const recut = new Map<string, Set<EditionName>>();
  const add = (name: string, editions: readonly EditionName[]): unknown =>
    recut.set(name, new Set([...(recut.get(name) ?? []), ...editions]));
  for (const revision of revisions) {
    for (const name of revision.recut ?? []) add(name, shown);
    for (const change of changesShown(revision, shown).filter(isOfPiece)) {
      if (change.what === 'size' && !change.after) recut.delete(pieceName(change, say));
      else if (!revision.recut && isRecut(change))
        add(pieceName(change, say), editionsToRecut(change, shown));
    }
  }
  return [...recut].map(([name, editions]) => {
    const [only] = editions;
    return only && editions.size < shown.length ? `${name} (${unitIn(only, say)})` : name;
  });
}

/** Of an edition that was not recorded nobody knows. */
function editionsToRecut(change: PieceChange, shown: Shown): readonly EditionName[] {
  const { before, after } = change;
  return shown.filter(
    (edition) => differsIn(change, edition) || [before, after].some((value) => value && !value[edition]),
  );
}

function isOfPiece(change: Revision['changes'][number]): change is PieceChange {
  return typeof change !== 'string' && 'piece' in change;
}

/** Whether the paper is cut or scored otherwise. */
function isRecut({ what }: PieceChange): boolean {
  return what !== 'place' && what !== 'pieces' && what !== 'impressions';
}

function stepWords({ steps, before = '', after = before }: StepChange, say: Say): string {
  if (steps === 'reordered') return say('change-steps-order');
  return say(`change-step-${steps}`, { step: after, before, after });
}

/** What is said of in the plural. */
const ARE_SEVERAL: readonly PieceChange['what'][] = ['scores', 'corners', 'pieces', 'edge', 'impressions'];

/** Nobody could tell from their lengths which of them is meant. */
const TOLD_AS_A_WHOLE: readonly PieceChange['what'][] = ['cuts', 'openings', 'runs', 'slants'];

function pieceWords(change: PieceChange, say: Say, shown: Shown): string {
  const { what, from, before, after } = change;
  const piece = pieceName(change, say);
  if (TOLD_AS_A_WHOLE.includes(what)) return say(`change-${what}`, { piece });
  const editions = editionsTold(change, shown);
  const tell = (value: PublishedValue | undefined): string =>
    value ? valueWords(value, what, editions, say) : '';
  const number = ARE_SEVERAL.includes(what) ? 'other' : 'one';
  return say(`change-${before ? (after ? 'was' : 'gone') : 'new'}-${number}`, {
    what: what === 'size' ? piece : say(`change-of-${what}${from ? `-from-${from}` : ''}`, { piece }),
    before: tell(before),
    after: tell(after),
  });
}

function pieceName({ piece, sheet, variant }: PieceChange, say: Say): string {
  const name = refNamed({ piece, ...(sheet !== undefined && { part: sheet }), face: 'outside' }, say);
  return variant === undefined ? name : say('piece-variant', { piece: name, variant: nameOf(variant) });
}

/** Whether the lengths of an edition changed. */
function differsIn({ before, after }: PieceChange, edition: EditionName): boolean {
  const [was, is] = [before, after].map((value) => value?.[edition]);
  if (before && after && !(was && is)) return false;
  return was?.length !== is?.length || !!was?.some((length, index) => !length.equals(is?.[index] ?? length));
}

/** The editions shown in which a thing changed; the leading one for what no length tells. */
function editionsTold(change: PieceChange, shown: Shown): readonly EditionName[] {
  const { before, after } = change;
  const found = shown.filter((edition) => differsIn(change, edition));
  if (found.length > 0) return found;
  const isElsewhere = before?.word === after?.word && before?.turn === after?.turn;
  const differs = (['inch', 'metric'] as const).some((edition) => differsIn(change, edition));
  return isElsewhere && differs ? [] : [shown[0]];
}

function valueWords(
  value: PublishedValue,
  what: PieceChange['what'],
  editions: readonly EditionName[],
  say: Say,
): string {
  const { lengths, size } = lengthsChanged(value, editions, say);
  const { word = '', turn } = value;
  if (what === 'outline') return outlineWords(value, lengths, say);
  if (what === 'corners' && word) return cornersWords(word, lengths, say);
  if (what === 'impressions') return `${word}: ${lengths.join(', ')}`;
  if (what === 'edge') return `${sidesWords(word, say)}: ${lengths.join(', ')}`;
  if (what === 'scores') return lengths.join(', ');
  if (what !== 'place') return word || size;
  const [left = '', top = ''] = lengths;
  const place = { base: sheetNamed(word, say), left, top };
  return turn === undefined
    ? say('change-place', place)
    : say('change-place-turned', { ...place, turn: say.figure(String(turn)) });
}

/** An outline as it is called, its lengths and its number in the order of its settings. */
function outlineWords(
  { word = '', count = 0 }: PublishedValue,
  lengths: readonly string[],
  say: Say,
): string {
  const left = [...lengths];
  const values = parametersOf(word).map(({ key, kind }) => [
    key,
    kind === 'count' ? count : (left.shift() ?? ''),
  ]);
  return say(outlineKey(word), Object.fromEntries(values));
}

/** Corners as they are recorded, `top, bottom left`, each with its radius. */
function cornersWords(corners: string, lengths: readonly string[], say: Say): string {
  const told = corners.split(', ').map((name, index) => {
    const radius = lengths[index] ?? '';
    return say.has(cornersKey(name)) ? say(cornersKey(name), { radius }) : `${name} ${radius}`;
  });
  return told.join(semicolon(say));
}

/** Sides as they are recorded, `left, right`, in words. */
function sidesWords(sides: string, say: Say): string {
  const named = sides.split(', ').map((side) => (say.has(`edge-${side}`) ? say(`edge-${side}`) : side));
  return named.join(', ');
}

/** A revision as it is told on a sheet. */
type RevisionView = { readonly number: number; readonly title: string; readonly changes: readonly string[] };

type RevisionsView = RevisionView & {
  /** Whether there was one before. */
  readonly isCorrection: boolean;
  readonly recut: readonly SafeHtml[];
  readonly earlier: readonly RevisionView[];
};

/** What a sheet says of its revisions, the latest first; undefined before the first. */
export function revisionsView({ revisions }: Ledger, voice: Voice, shown: Shown): RevisionsView | undefined {
  const [latest, ...earlier] = revisions.toReversed();
  if (!latest) return undefined;
  return {
    ...viewOf(latest, voice, shown),
    isCorrection: earlier.length > 0,
    recut: recutWords(revisions, voice, shown),
    earlier: earlier.map((revision) => viewOf(revision, voice, shown)),
  };
}

export function revisionTitle({ number, date }: Revision, voice: Voice): string {
  return voice.say('revision', { number, date: voice.date(date) });
}

function viewOf(revision: Revision, voice: Voice, shown: Shown): RevisionView {
  const { changes } = revisionWords(revision, voice.say, shown);
  return {
    number: revision.number,
    title: revisionTitle(revision, voice),
    changes: revision.changes.length > 0 ? changes : [voice.say('first-published')],
  };
}

/**
 * Which pieces whoever has an earlier revision cuts again, the nearest first. The older it is the more they are: all that
 * was changed since, so that a sentence follows for each revision that adds to them.
 */
export function recutWords(revisions: readonly Revision[], voice: Voice, shown?: Shown): readonly SafeHtml[] {
  const own = revisions.at(-1)?.own ?? 'inch';
  let said = '';
  return revisions.slice(0, -1).flatMap((_, index, earlier) => {
    const nth = earlier.length - index;
    const before = revisions[nth - 1]?.number ?? 0;
    const names = recutNames(
      revisions.slice(nth),
      voice.say,
      shown ?? shownEditions({ own, printed: 'both' }),
    );
    if (names.join() === said) return [];
    said = names.join();
    return voice.phrase('cut-again', { before, pieces: voice.list(names) });
  });
}
