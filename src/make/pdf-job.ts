import { fontsFor, typefaceDigest } from './assets.ts';
import type { Job } from './job.ts';
import { dayOf, type ProjectMaterial } from './output.ts';

/**
 * A PDF of a page of the site, made again when the page is another.
 * @param html asked for once, when its turn has come: no page waits for those before it.
 */
export function pdfJob(
  material: ProjectMaterial,
  name: string,
  html: () => string,
  { title, arrange }: { readonly title: string; readonly arrange?: string },
): Job {
  const date = dayOf(material);
  let known: string | undefined;
  const page = (): string => {
    known ??= html();
    return known;
  };
  return {
    path: `site/${material.slug}/${name}`,
    from: () => [date, typefaceDigest(material.files), page(), arrange].join('\n'),
    isPrinted: true,
    produce: () => {
      const fonts = fontsFor(page(), material.files);
      return material.printer.pdf(page(), { title, date, arrange, fonts, batch: material.slug });
    },
  };
}
