import type { Figure, PlacedPicture } from '../drawing/figures.ts';
import { type Editions, ownEdition } from '../edition/editions.ts';
import { renderMarkdown } from '../handout/markdown.ts';
import type { ProseSetting } from '../handout/markdown-handlers.ts';
import { withoutHost } from '../handout/markdown-handlers.ts';
import { proseSetting } from '../handout/prose.ts';
import { type Setting, settingOf } from '../handout/setting.ts';
import { stocksUsed } from '../handout/supplies.ts';
import type { Project, Step, SupplyKind } from '../project/model.ts';
import type { Labels } from '../words/labels.ts';
import { html, plainText, SafeHtml } from '../words/safe-html.ts';

/** A `HowTo` of schema.org, as JSON-LD. Addresses are relative to the project's page. */
export type HowTo = {
  readonly '@context': 'https://schema.org';
  readonly '@type': 'HowTo';
  readonly name: string;
  readonly description?: string;
  readonly inLanguage: string;
  readonly image?: string;
  /** ISO 8601 durations. */
  readonly totalTime?: string;
  readonly supply: readonly Item<'HowToSupply'>[];
  readonly tool: readonly Item<'HowToTool'>[];
  readonly step: readonly HowToStep[];
};

type Item<Type extends string> = { readonly '@type': Type; readonly name: string };

export type HowToStep = {
  readonly '@type': 'HowToStep';
  readonly position: number;
  readonly name: string;
  readonly text: string;
  readonly url: string;
  readonly image?: string;
};

/** What is still there afterwards is a tool; all else is used up. */
const TOOLS: readonly SupplyKind[] = ['tool', 'punch', 'die', 'stamp'];

/** A project as machines read it: what is needed, how long it takes, and every step in plain words. */
export function howTo(about: {
  readonly editions: Editions;
  readonly labels: Labels;
  readonly pictures: ReadonlyMap<string, PlacedPicture>;
  readonly image: string | undefined;
}): HowTo {
  const { editions, labels, pictures, image } = about;
  const { project } = ownEdition(editions);
  // As for a print: what is meant for a screen reader's ear would be read twice.
  const setting = { ...settingOf(editions, 'letter', labels, pictures) };
  const isTool = ({ kind }: Project['supplies'][number]): boolean => TOOLS.includes(kind.value);
  const minutes = minutesOf(project);
  return {
    '@context': 'https://schema.org',
    '@type': 'HowTo',
    name: project.title.value,
    ...(project.summary && { description: project.summary.value }),
    inLanguage: labels.language,
    ...(image !== undefined && { image }),
    ...(minutes > 0 && { totalTime: `PT${minutes}M` }),
    supply: [
      ...stocksUsed(setting).map(({ name }) => ({ '@type': 'HowToSupply' as const, name })),
      ...project.supplies
        .filter((supply) => !isTool(supply))
        .map(({ item }) => ({ '@type': 'HowToSupply' as const, name: item.value })),
    ],
    tool: project.supplies.filter(isTool).map(({ item }) => ({ '@type': 'HowToTool', name: item.value })),
    step: project.steps.map((step, index) => stepOf(step, index + 1, setting)),
  };
}

/** All that passes from beginning to end: work as the demonstrator says, or the steps' together, and waiting. */
function minutesOf({ minutes, steps }: Project): number {
  const work = minutes?.value ?? steps.reduce((total, step) => total + (step.minutes?.value ?? 0), 0);
  return work + steps.reduce((total, { dry }) => total + (dry?.value ?? 0), 0);
}

const NO_FIGURE: Figure = { html: SafeHtml.empty, width: 0 };

function stepOf({ heading, prose }: Step, position: number, setting: Setting): HowToStep {
  const words: ProseSetting = {
    ...proseSetting(setting),
    draw: () => NO_FIGURE,
    picture: () => NO_FIGURE,
  };
  const name = plainText(renderMarkdown(heading, words));
  const text = plainText(renderMarkdown(withoutHost(prose.nodes), words));
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
