import type { PlacedPicture } from '../drawing/placed-picture.ts';
import type { DrawingStyle } from '../drawing/style.ts';
import { type Editions, ownEdition, shownEditions } from '../edition/editions.ts';
import type { EditionName } from '../measure/ruler-unit.ts';
import type { Project } from '../project/model.ts';
import type { Labels } from '../words/labels.ts';
import { type Measures, measuresFor } from '../words/measures.ts';
import { pieceNamed } from '../words/names.ts';
import { type TwinFinder, twinFinder } from '../words/twins.ts';
import { ofVariants, waysOf } from '../words/variants.ts';
import { type Voice, voiceOf } from '../words/voice.ts';
import type { Print } from './prints.ts';

/** What a sheet is made for: a web page, or one of the three prints. */
export type Target = 'page' | Print;

/** What every part of one sheet is set with. */
export type Setting = {
  readonly editions: Editions;
  /** As the demonstrator wrote it. */
  readonly project: Project;
  readonly target: Target;
  readonly labels: Labels;
  readonly voice: Voice;
  readonly measures: Measures;
  readonly finder: TwinFinder;
  readonly drawings: DrawingStyle;
  /** By the path a project names them by. */
  readonly pictures: ReadonlyMap<string, PlacedPicture>;
};

/** Which edition comes first where the paper does not decide: the one the demonstrator measured in. */
const LEADING: Readonly<Partial<Record<Target, EditionName>>> = { letter: 'inch', a4: 'metric' };

/** The size of a drawing's lettering in millimeters: 8½ pt, and 18 pt in large print. */
const LETTERING = { usual: 3, large: 6.35 };

/** What a paper beside the sheet is called, in the title of its PDF. */
export function paperTitle(editions: Editions, labels: Labels, paper: 'cue-card' | 'pdf-template'): string {
  return `${ownEdition(editions).project.title.value}: ${voiceOf(labels).say(paper)}`;
}

export function settingOf(
  editions: Editions,
  target: Target,
  labels: Labels,
  pictures: ReadonlyMap<string, PlacedPicture>,
): Setting {
  const voice = voiceOf(labels);
  const shown = shownEditions(editions, LEADING[target]);
  return {
    editions,
    project: ownEdition(editions).project,
    target,
    labels,
    voice,
    measures: measuresFor(voice, shown, target === 'page'),
    finder: twinFinder(editions),
    drawings: {
      shown,
      say: voice.say,
      lettering: target === 'large-print' ? LETTERING.large : LETTERING.usual,
    },
    pictures,
  };
}

/**
 * The same for one variant of a project.
 * @param of where its pieces are to be called by it: the name of the variant, or of those it is like.
 */
export function inVariant(setting: Setting, variant: Editions, of?: string): Setting {
  const alone = { ...setting, editions: variant, project: ownEdition(variant).project };
  if (of === undefined) return alone;
  const labels = { ...setting.labels, pieces: piecesOf(variant, of, setting) };
  const voice = voiceOf(labels);
  return { ...alone, labels, voice, drawings: { ...setting.drawings, say: voice.say } };
}

/** `box (large)`, by the ids of the pieces. */
function piecesOf(variant: Editions, of: string, { voice }: Setting): ReadonlyMap<string, string> {
  const ids = [...ownEdition(variant).project.pieces.keys()];
  return new Map(ids.map((id) => [id, ofVariants(pieceNamed(id, voice.say), of, voice)]));
}

/** What is drawn of each variant: once where all look alike, else with the names of those that do. */
export function drawnWays<T extends { readonly svg: string }>(
  setting: Setting,
  draw: (one: Setting) => T | undefined,
): readonly { readonly drawing: T; readonly one: Setting; readonly of: string | undefined }[] {
  const alone = (variant: Editions): T | undefined => draw(inVariant(setting, variant));
  return waysOf(setting.editions, setting.voice, alone, ({ svg }) => svg).flatMap(({ value, first, of }) => {
    const one = inVariant(setting, first, of);
    const drawing = of === undefined ? value : draw(one);
    return drawing ? [{ drawing, one, of }] : [];
  });
}
