import { templateFile, templateHtml, templatePieces, templateTitle } from '../../handout/template-print.ts';
import type { Paper } from '../../project/model.ts';
import { templateStyles } from '../assets.ts';
import { dayOf } from '../day.ts';
import type { Job, Output, ProjectMaterial } from '../output.ts';
import { templateName } from '../papers.ts';

/**
 * `site/<slug>/<slug>-template.pdf` at actual size on the site's first paper, `-template-a4.pdf` on a further one, and
 * `<slug>-template.svg` (`-template-lid.svg` for further sheets) in millimetres.
 */
export const template: Output = {
  id: 'template',
  ofProject: (material) => [
    ...(material.pdf ? material.site.paper.flatMap((paper) => pdfJob(material, paper)) : []),
    ...svgJobs(material),
  ],
};

function pdfJob(material: ProjectMaterial, paper: Paper): Job[] {
  const { editions, ledger, site, slug, labels, files, renderer, printer } = material;
  const styles = { kind: 'inline', css: templateStyles(files) } as const;
  const html = templateHtml({ editions, site, labels, paper, styles, renderer });
  if (html === undefined) return [];
  const date = dayOf(editions, ledger);
  const title = templateTitle(editions, labels);
  return [
    {
      path: `site/${slug}/${templateName(site, slug, paper)}`,
      from: `${date}\n${html}`,
      produce: () => printer.pdf(html, { title, date }),
    },
  ];
}

function svgJobs({ editions, slug, labels }: ProjectMaterial): Job[] {
  return templatePieces(editions).flatMap((id, index) => {
    const svg = templateFile(editions, id, labels);
    const name = index === 0 ? `${slug}-template.svg` : `${slug}-template-${id.replaceAll('.', '-')}.svg`;
    return svg === undefined ? [] : [{ path: `site/${slug}/${name}`, produce: () => svg }];
  });
}
