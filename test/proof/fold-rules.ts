import type { RuleId } from '../../src/project/finding.ts';
import type { Project, Workspace } from '../../src/project/model.ts';
import { proofProject } from '../../src/proof/proof.ts';
import { rules } from '../../src/proof/rules/index.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import type { Told } from '../../src/proof/told.ts';
import { layPieces } from '../../src/shape/layers.ts';
import type { Nets } from '../../src/shape/sheets.ts';

/** The rules that look at how a sheet folds, is held and is seen; the quickest first, for whoever asks for one objection. */
const FOLD_RULES: readonly RuleId[] = [
  'loose-part',
  'missing-slit',
  'strip-torn',
  'walls-unequal',
  'does-not-close',
  'bottom-gap',
  'tuck-does-not-fit',
  'flap-too-long',
  'flap-wrong-way',
  'gusset-off-middle',
  'gates-apart',
  'uneven-fold',
  'glue-misses',
  'glue-overlap',
  'glue-sticks-out',
  'too-thick-to-fold',
  'does-not-nest',
  'not-held',
  'flap-left-out',
  'panels-collide',
  'layer-off-paper',
  'layer-across-fold',
  'glue-blocked',
  'glue-other-side',
  'fold-blocked',
  'fold-reversed',
  'rolled-leaf',
  'front-inside',
  'layer-covered',
];

/** What they find in a project whose nets are these. */
export function foldFindings(workspace: Workspace, project: Project, nets: Nets): readonly Told[] {
  return [...eachFoldFinding(workspace, project, nets)];
}

/** The same, one rule after the other. */
export function* eachFoldFinding(workspace: Workspace, project: Project, nets: Nets): Generator<Told> {
  const { layers } = layPieces([...project.pieces.values()], nets);
  const read = { ...project, findings: [] };
  for (const id of FOLD_RULES) {
    const asked = { [id]: rules[id] };
    yield* mergeFindings(proofProject(workspace, read, { nets, layers, findings: [] }, asked));
  }
}
