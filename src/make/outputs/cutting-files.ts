import { type CuttingPlan, planCutting } from '../../cutting/cutting-plan.ts';
import { cuttingSvg } from '../../cutting/cutting-svg.ts';
import { cuttingDxf } from '../../cutting/dxf.ts';
import { ownEdition } from '../../edition/editions.ts';
import { speaker } from '../../words/labels.ts';
import type { Output, ProjectMaterial } from '../output.ts';

/** `site/<slug>/<slug>.svg` and `.dxf`: every piece at full size, for a cutting machine. */
export const cuttingFiles: Output = {
  ofProject: (material) => {
    const plan = planOf(material);
    if (!plan) return [];
    const { slug, editions } = material;
    const title = ownEdition(editions).project.title.value;
    return [
      { path: `site/${slug}/${slug}.svg`, produce: () => cuttingSvg(plan, title) },
      { path: `site/${slug}/${slug}.dxf`, produce: () => cuttingDxf(plan) },
    ];
  },
  downloads: ({ slug, editions }) =>
    ownEdition(editions).project.pieces.size === 0
      ? []
      : [
          { label: 'cutting-svg', href: `${slug}.svg` },
          { label: 'cutting-dxf', href: `${slug}.dxf` },
        ],
};

function planOf({ editions, site, labels }: ProjectMaterial): CuttingPlan | undefined {
  const { mat, scores } = site.bench;
  return planCutting(
    editions,
    { mat: { width: mat.width.value, height: mat.height.value }, scores },
    speaker(labels),
  );
}
