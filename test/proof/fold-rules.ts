import type { RuleId } from '../../src/project/finding.ts';
import type { Project, Workspace } from '../../src/project/model.ts';
import { proofProject } from '../../src/proof/proof.ts';
import { rules } from '../../src/proof/rules/index.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import type { Told } from '../../src/proof/told.ts';
import { layPieces } from '../../src/shape/layers.ts';
import type { Net } from '../../src/shape/net.ts';

/** The rules that look at how a sheet folds, is held and is seen. */
const FOLD_RULES: readonly RuleId[] = [
  'bottom-gap',
  'does-not-close',
  'does-not-nest',
  'flap-left-out',
  'flap-too-long',
  'flap-wrong-way',
  'fold-blocked',
  'front-inside',
  'gates-apart',
  'glue-blocked',
  'glue-misses',
  'glue-other-side',
  'glue-overlap',
  'glue-sticks-out',
  'gusset-off-middle',
  'loose-part',
  'missing-slit',
  'not-held',
  'panels-collide',
  'rolled-leaf',
  'too-thick-to-fold',
  'tuck-does-not-fit',
  'uneven-fold',
  'walls-unequal',
];

/** What they find in a project whose nets are these. */
export function foldFindings(
  workspace: Workspace,
  project: Project,
  nets: ReadonlyMap<string, Net>,
): readonly Told[] {
  const { layers } = layPieces([...project.pieces.values()], nets);
  const asked = Object.fromEntries(FOLD_RULES.map((id) => [id, rules[id]]));
  const read = { ...project, findings: [] };
  return mergeFindings(proofProject(workspace, read, { nets, layers, findings: [] }, asked));
}
