import type { Figure } from '../drawing/figures.ts';
import type { PlacedPicture } from '../drawing/placed-picture.ts';
import { type Editions, ownEdition } from '../edition/editions.ts';
import { minutesOf } from '../handout/facts.ts';
import { markdownText } from '../handout/markdown.ts';
import { type ProseSetting, withoutHost } from '../handout/markdown-handlers.ts';
import { shownText } from '../handout/measured-text.ts';
import { type Setting, settingOf } from '../handout/setting.ts';
import { proseSetting } from '../handout/steps.ts';
import { stocksUsed } from '../handout/supplies.ts';
import type { Project, Step } from '../project/model.ts';
import type { SupplyKind } from '../project/supply.ts';
import type { Labels } from '../words/labels.ts';
import { html, SafeHtml } from '../words/safe-html.ts';

/** What is still there afterwards is a tool; all else is used up. */
const TOOLS: readonly SupplyKind[] = ['tool', 'punch', 'die', 'stamp'];

/**
 * A project as machines read it, a `HowTo` of schema.org in JSON-LD: what is needed, how long it takes (in ISO 8601
 * durations), and every step in plain words. Addresses are relative to the project's page.
 */
export function howTo(about: {
  readonly editions: Editions;
  readonly labels: Labels;
  readonly pictures: ReadonlyMap<string, PlacedPicture>;
  readonly image: string | undefined;
}): object {
  const { editions, labels, pictures, image } = about;
  const { project } = ownEdition(editions);
  // As for a print, the author's unit first: what is meant for a screen reader's ear would be read twice.
  const setting = settingOf(editions, editions.own === 'inch' ? 'letter' : 'a4', labels, pictures);
  const isTool = ({ kind }: Project['supplies'][number]): boolean => TOOLS.includes(kind.value);
  const { worked, dry } = minutesOf(project);
  return {
    '@context': 'https://schema.org',
    '@type': 'HowTo',
    name: project.title.value,
    ...(project.summary && { description: shownText(project.summary.value, setting) }),
    inLanguage: labels.language,
    ...(image !== undefined && { image }),
    ...(worked + dry > 0 && { totalTime: `PT${worked + dry}M` }),
    supply: [
      ...stocksUsed(project).map(({ name }) => ({ '@type': 'HowToSupply', name })),
      ...project.supplies
        .filter((supply) => !isTool(supply))
        .map(({ item }) => ({ '@type': 'HowToSupply', name: shownText(item.value, setting) })),
    ],
    tool: project.supplies
      .filter(isTool)
      .map(({ item }) => ({ '@type': 'HowToTool', name: shownText(item.value, setting) })),
    step: project.steps.map((step, index) => stepOf(step, index + 1, setting)),
  };
}

const NO_FIGURE: Figure = { html: SafeHtml.empty, width: 0 };

function stepOf({ heading, prose }: Step, position: number, setting: Setting): object {
  const words: ProseSetting = {
    ...proseSetting(setting),
    draw: () => NO_FIGURE,
    picture: () => NO_FIGURE,
  };
  const name = markdownText(heading, words);
  const text = markdownText(withoutHost(prose.nodes), words);
  const image = prose.pictures.flatMap(({ path }) => setting.pictures.get(path.value)?.src ?? [])[0];
  return {
    '@type': 'HowToStep',
    position,
    name,
    text: text === '' ? name : text,
    url: `#step-${position}`,
    ...(image !== undefined && { image }),
  };
}

/** JSON in a script element. No character that HTML or a script could take for something else is left in it. */
export function jsonScript(data: object): SafeHtml {
  const json = JSON.stringify(data).replace(
    /[<>&\u2028\u2029]/gu,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
  return SafeHtml.join([html`<script type="application/ld+json">`, SafeHtml.vouched(json), html`</script>`]);
}
