import { sheetHtml } from '../../handout/sheet.ts';
import { sessionEvent } from '../../site/event.ts';
import { siteElements } from '../../site/frame.ts';
import { howTo, jsonScript } from '../../site/how-to.ts';
import { kindsOf } from '../../site/kinds.ts';
import { meetingView } from '../../site/meeting.ts';
import { projectPreview } from '../../site/share-page.ts';
import { SafeHtml } from '../../words/safe-html.ts';
import { iconNames, moreScriptOf, OFFLINE, pagesAt } from '../assets.ts';
import { cardOf } from '../card.ts';
import { projectLinkPicture } from '../link-picture.ts';
import type { Output, ProjectMaterial } from '../output.ts';
import { keptHref } from '../papers.ts';
import { picturesOnPage } from '../pictures.ts';

/** `site/<slug>/index.html`: the sheet as a page, and the pictures it shows. */
export const page: Output = {
  ofProject: (material) => [
    { path: `site/${material.slug}/index.html`, produce: () => pageHtml(material) },
    ...material.pictures
      .flatMap(({ renditions }) => renditions)
      .map(({ name, bytes }) => ({ path: `site/${material.slug}/${name}`, produce: () => bytes })),
  ],
};

function pageHtml(material: ProjectMaterial): string {
  const { editions, site, ledger, labels, pictures, downloads, renderer } = material;
  const { styles, scripts } = pagesAt('../', material, 'sheet');
  return sheetHtml({
    editions,
    site,
    labels,
    renderer,
    ledger,
    target: 'page',
    pictures: picturesOnPage(pictures),
    styles,
    scripts: [`../${moreScriptOf(material.slug)}`, ...scripts],
    links: { home: '../index.html', downloads, share: 'share/index.html', offline: `../${OFFLINE}` },
    earlier: material.kept.map((print) => ({
      revision: print.revision,
      label: print.of === 'handout' ? `pdf-${print.paper}` : `pdf-template-${print.paper}`,
      href: keptHref(material.slug, print),
    })),
    more: kindsOf(cardOf(material)),
    head: headOf(material),
    meeting: meetingView(cardOf(material), material, `${material.slug}.ics`),
  });
}

/** What the page says of itself to programs. */
function headOf(material: ProjectMaterial): SafeHtml {
  const { editions, site, labels, pictures, slug } = material;
  const card = cardOf(material);
  const image = card.picture?.src.slice(`${slug}/`.length);
  const event = sessionEvent(card, site, image);
  return SafeHtml.join(
    [
      siteElements('../', iconNames(), site.title),
      projectPreview(card, projectLinkPicture(material).name, material),
      jsonScript(howTo({ editions, labels, pictures: picturesOnPage(pictures), image })),
      ...(event ? [jsonScript(event)] : []),
    ],
    '\n',
  );
}
