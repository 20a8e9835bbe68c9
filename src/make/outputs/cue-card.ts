import { cueCardHtml } from '../../cue/card.ts';
import { ROOMS } from '../../cue/room.ts';
import { paperTitle } from '../../handout/setting.ts';
import { pageCount } from '../../print/pdf.ts';
import { printStyles } from '../assets.ts';
import type { Job } from '../job.ts';
import { dayOf, type Output, type ProjectMaterial } from '../output.ts';

/** Two sides of one sheet of paper. */
const MOST_PAGES = 2;

/** `host/<slug>-cue-card.pdf`: the demonstrator's own, never part of the site. */
export const cueCard: Output = {
  ofProject: (material) => (material.pdf ? [cueJob(material)] : []),
};

function cueJob(material: ProjectMaterial): Job {
  const { slug, editions, labels } = material;
  const date = dayOf(material);
  const cards = cardsOf(material);
  return {
    path: `host/${slug}-cue-card.pdf`,
    from: [date, ...cards].join('\n'),
    isPrinted: true,
    produce: () => fitted(cards, material, { title: paperTitle(editions, labels, 'cue-card'), date }),
  };
}

/** The card with all there is, then with less and less. */
function cardsOf({ editions, site, labels, ledger, files, renderer }: ProjectMaterial): readonly string[] {
  const styles = printStyles(files, 'cue');
  return ROOMS.map((room) => cueCardHtml({ editions, site, labels, ledger, styles, renderer }, room));
}

/** The fullest card that fits; where none does, the barest. */
async function fitted(
  cards: readonly string[],
  { printer }: ProjectMaterial,
  options: { readonly title: string; readonly date: string },
): Promise<Uint8Array> {
  let bytes = new Uint8Array();
  for (const card of cards) {
    bytes = new Uint8Array(await printer.pdf(card, options));
    if (pageCount(bytes) <= MOST_PAGES) break;
  }
  return bytes;
}
