import { cueCardHtml } from '../../cue/card.ts';
import { type CardRoom, ROOMS } from '../../cue/room.ts';
import { paperTitle } from '../../handout/setting.ts';
import { pageCount } from '../../print/pdf.ts';
import { programDigest } from '../../recall/program.ts';
import { fontsFor, printStyles } from '../assets.ts';
import type { Job } from '../job.ts';
import { dayOf, type Output, type ProjectMaterial } from '../output.ts';
import { picturesInPrint } from '../pictures.ts';

/** Two sides of one sheet of paper. */
const MOST_PAGES = 2;

/** How wide a photo is shown at most, in millimeters. */
const WIDEST = 24;

/** `host/<slug>-cue-card.pdf`: the demonstrator's own, never part of the site. */
export const cueCard: Output = {
  ofProject: (material) => (material.pdf ? [cueJob(material)] : []),
};

function cueJob(material: ProjectMaterial): Job {
  const { slug, editions, labels } = material;
  const date = dayOf(material);
  const fullest = cardHtml(material, ROOMS[0]);
  return {
    path: `host/${slug}-cue-card.pdf`,
    // All that the lesser cards say is on the fullest, except our own words.
    from: () => [date, programDigest(), material.files.digest, fullest].join('\n'),
    isPrinted: true,
    produce: () => fitted(fullest, material, { title: paperTitle(editions, labels, 'cue-card'), date }),
  };
}

function cardHtml(
  { editions, site, labels, ledger, files, renderer, pictures }: ProjectMaterial,
  room: CardRoom,
): string {
  const styles = printStyles(files, 'cue');
  const shown = picturesInPrint(pictures, WIDEST);
  const input = { editions, site, labels, ledger, styles, renderer, pictures: shown };
  return cueCardHtml(input, room);
}

/** The card with all there is, then with less and less until it fits; where none does, the barest. */
async function fitted(
  fullest: string,
  material: ProjectMaterial,
  options: { readonly title: string; readonly date: string },
): Promise<Uint8Array> {
  const [, ...lesser] = ROOMS;
  const print = (html: string): Promise<Uint8Array> =>
    material.printer.pdf(html, { ...options, fonts: fontsFor(html, material.files), batch: material.slug });
  let bytes = await print(fullest);
  for (const room of lesser) {
    if (pageCount(bytes) <= MOST_PAGES) break;
    bytes = await print(cardHtml(material, room));
  }
  return bytes;
}
