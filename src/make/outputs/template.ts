import { templatePieces } from '../../handout/piece-sheets.ts';
import { paperTitle } from '../../handout/setting.ts';
import { templateFiles, templateHtml } from '../../handout/template-print.ts';
import type { Paper } from '../../project/model.ts';
import { printStyles } from '../assets.ts';
import type { Job } from '../job.ts';
import type { Output, ProjectMaterial } from '../output.ts';
import { pdfName } from '../papers.ts';
import { pdfJob } from '../pdf-job.ts';

/**
 * `site/<slug>/<slug>-template.pdf` at actual size on the site's first paper, `-template-a4.pdf` on a further one, and
 * `<slug>-template.svg` (`-template-lid.svg` for further sheets, `-template-large.svg` for a variant) in millimeters.
 */
export const template: Output = {
  ofProject: (material) => [
    ...(material.pdf ? material.site.paper.flatMap((paper) => onPaper(material, paper)) : []),
    ...svgJobs(material),
  ],
  downloads: ({ site, slug, editions, offersPdfs }) => {
    const papers = offersPdfs && templatePieces(editions).length > 0 ? site.paper : [];
    return papers.map((paper) => {
      const isOne = papers.length === 1;
      return {
        label: isOne ? 'pdf-template' : `pdf-template-${paper}`,
        href: pdfName(site, `${slug}-template`, paper),
        listed: { line: 'site-template', paper: `site-paper-${isOne ? 'template' : paper}` },
      };
    });
  },
};

function onPaper(material: ProjectMaterial, paper: Paper): Job[] {
  const { editions, site, slug, ledger, labels, files, renderer } = material;
  const styles = printStyles(files, 'template');
  const html = templateHtml({ editions, site, ledger, labels, paper, styles, renderer });
  if (html === undefined) return [];
  return [
    pdfJob(material, pdfName(site, `${slug}-template`, paper), () => html, {
      title: paperTitle(editions, labels, 'pdf-template'),
    }),
  ];
}

function svgJobs({ editions, slug, labels }: ProjectMaterial): Job[] {
  return templatePieces(editions).flatMap((id, index) =>
    templateFiles(editions, id, labels).map(({ svg, variant }) => {
      const further = index === 0 ? [] : [id.replaceAll('.', '-')];
      const name = [slug, 'template', ...further, ...(variant === undefined ? [] : [variant])].join('-');
      return { path: `site/${slug}/${name}.svg`, produce: () => svg };
    }),
  );
}
