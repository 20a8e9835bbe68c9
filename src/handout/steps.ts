import type { Paragraph, RootContent } from 'mdast';
import type { Figure } from '../drawing/figures.ts';
import type { Step } from '../project/model.ts';
import { renderMarkdown } from './markdown.ts';
import { drawingOf, type ProseSetting, withoutHost } from './markdown-handlers.ts';
import { proseSetting } from './prose.ts';
import type { Setting } from './setting.ts';

/** The widest figure that stands beside a step's text, in millimetres. */
const BESIDE = 84;
/** More of them than this would make the column of figures longer than the text. */
const MOST_BESIDE = 2;
/** A step of more characters than this may break over two pages; in large type, one with fewer. */
const LONG = { usual: 1400, large: 480 };

export function stepViews(setting: Setting): readonly object[] {
  return setting.project.steps.map((step, index) => stepView(setting, step, index + 1));
}

function stepView(setting: Setting, step: Step, number: number): object {
  const { voice } = setting;
  const prose = proseSetting(setting);
  const { flow, beside } = parted(step.prose.nodes, prose);
  const text = renderMarkdown(flow, prose);
  return {
    number,
    id: `step-${number}`,
    title: renderMarkdown(step.heading, prose),
    time: step.minutes && voice.duration(step.minutes.value),
    dry: step.dry && voice.say('step-dry', { duration: voice.duration(step.dry.value) }),
    ahead: step.ahead,
    text,
    figures: beside.map((figure) => figure.html),
    // Too long to be kept on one page.
    long: text.text.length > (setting.target === 'large-print' ? LONG.large : LONG.usual),
  };
}

/** Takes the narrow figures out of the flow, if they are few. */
function parted(
  nodes: readonly RootContent[],
  prose: ProseSetting,
): { flow: RootContent[]; beside: readonly Figure[] } {
  const shown = withoutHost(nodes).flatMap(picturesApart);
  const found = new Map<RootContent, Figure>();
  for (const node of shown) {
    const figure = figureOf(node, prose);
    if (figure && figure.width <= BESIDE) found.set(node, figure);
  }
  if (found.size > MOST_BESIDE) return { flow: shown, beside: [] };
  return { flow: shown.filter((node) => !found.has(node)), beside: [...found.values()] };
}

/** A paragraph broken where a picture stands in it. */
function picturesApart(node: RootContent): RootContent[] {
  if (node.type !== 'paragraph' || node.children.every(({ type }) => type !== 'image')) return [node];
  const paragraphs: Paragraph[] = [];
  for (const child of node.children) {
    const last = paragraphs.at(-1);
    const joins = last && child.type !== 'image' && last.children[0]?.type !== 'image';
    if (joins) last.children.push(child);
    else paragraphs.push({ type: 'paragraph', children: [child] });
  }
  return paragraphs;
}

/** The figure that a block is, and nothing else. */
function figureOf(node: RootContent, prose: ProseSetting): Figure | undefined {
  if (node.type === 'leafDirective') return drawingOf(node, prose);
  if (node.type !== 'paragraph') return undefined;
  const [only, ...others] = node.children;
  if (only?.type !== 'image' || others.length > 0) return undefined;
  return prose.picture(only.url, only.alt ?? '', only.title ?? undefined);
}
