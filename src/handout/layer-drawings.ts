import { alikeBases } from '../drawing/alike-bases.ts';
import { drawingFigure, type Figure } from '../drawing/figures.ts';
import { lowestBases } from '../drawing/pile.ts';
import { stackDrawing } from '../drawing/stack.ts';
import type { DrawingRoom } from '../drawing/style.ts';
import type { Step } from '../project/model.ts';
import { isSameRef, type Ref } from '../project/ref.ts';
import type { Shapes } from '../shape/shapes.ts';
import { drawnBase } from '../shape/view/views.ts';
import { baseName } from '../words/names.ts';
import { SafeHtml } from '../words/safe-html.ts';
import { variantsOf } from '../words/variants.ts';
import type { Voice } from '../words/voice.ts';
import { drawnWays, type Setting } from './setting.ts';

/** A base with layers on it, and the number of the step that sticks most of them; 0 where no step speaks of any. */
type BaseInStep = { readonly base: Ref; readonly step: number };

/** Every base with its layers but the first `shown`, which stand elsewhere, and those that steps draw by themselves. */
export function basesBySteps(setting: Setting, shown: number): readonly BaseInStep[] {
  const all = variantsOf(setting.editions).flatMap((variant) => lowestBases(variant));
  const bases = all.filter((base, index) => all.findIndex((other) => isSameRef(base, other)) === index);
  const drawn = basesDrawn(setting);
  return bases
    .slice(shown)
    .filter((base) => !drawn.some((other) => isSameRef(base, other)))
    .map((base) => ({ base, step: stepFor(setting, base) }));
}

/** What steps draw with its layers, as their text asks. */
function basesDrawn({ project, editions, measures }: Setting): readonly Ref[] {
  const drawn = project.steps
    .flatMap(({ prose }) => prose.references)
    .filter(({ kind, view }) => kind === 'drawing' && view?.value === 'layers');
  return drawn.flatMap(({ of }) => drawnBase(editions[measures.leading].shapes, of.value) ?? []);
}

function stepFor({ project, editions, measures }: Setting, base: Ref): number {
  const pieces = piecesOn(editions[measures.leading].shapes, base);
  const worth = project.steps.map((step) => mentions(step, pieces));
  const most = Math.max(0, ...worth);
  return most === 0 ? 0 : worth.lastIndexOf(most) + 1;
}

/** How often a step speaks of some pieces; a border is what sticking leaves. */
function mentions({ prose }: Step, pieces: ReadonlySet<string>): number {
  return prose.references
    .filter(({ of }) => pieces.has(of.value.piece))
    .reduce((sum, { kind }) => sum + (kind === 'reveal' ? 2 : kind === 'piece' ? 1 : 0), 0);
}

/** What lies on a base, and on that. */
function piecesOn({ layers }: Shapes, base: Ref): ReadonlySet<string> {
  const pieces = new Set<string>();
  for (const { piece, on } of layers) {
    const isOnLayer = on.part === undefined && on.face === 'outside' && pieces.has(on.piece);
    if (isSameRef(on, base) || isOnLayer) pieces.add(piece.id.value);
  }
  return pieces;
}

/** The layers on some bases drawn in every way that the variants have them, those that are alike once. */
export function layerFigures(setting: Setting, bases: readonly Ref[], room: DrawingRoom): readonly Figure[] {
  return alikeBases(setting.editions, bases, setting.drawings).flatMap((alike) => {
    const [base] = alike;
    if (!base) return [];
    const draw = ({ editions, drawings }: Setting) => stackDrawing(editions, base, room, drawings, alike);
    return drawnWays(setting, draw).map(({ drawing, one: { voice } }) =>
      drawingFigure(drawing, stackCaption(alike, voice)),
    );
  });
}

/** What the drawing of the layers on some bases is of. */
export function stackCaption(bases: readonly Ref[], voice: Voice): SafeHtml {
  const isBehind = bases.every(({ face, part }) => face === 'behind' && part !== undefined);
  const named = bases.map((base) => baseName(isBehind ? { ...base, face: 'outside' } : base, voice));
  return voice.phrase(isBehind ? 'stack-behind' : 'stack-of', { base: SafeHtml.join([voice.list(named)]) });
}
