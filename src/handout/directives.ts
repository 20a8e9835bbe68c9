import type { Element } from 'hast';
import type { PhrasingContent, RootContent } from 'mdast';
import { toString as textWithin } from 'mdast-util-to-string';
import type {} from 'remark-directive';
import type { Figure } from '../drawing/figures.ts';
import type { ReferenceKind } from '../project/model.ts';
import {
  asWritten,
  elementOf,
  type Handlers,
  type Place,
  type ProseSetting,
  type State,
  textOf,
} from './markdown-nodes.ts';

type Node<Type extends string> = Extract<RootContent, { type: Type }>;
export type LeafDirective = Node<'leafDirective'>;

/** Answered within a line of text. */
const REFERENCES: ReadonlySet<string> = new Set([
  'piece',
  'size',
  'scores',
  'reveal',
  'count',
] satisfies ReferenceKind[]);
/** Answered with a list. */
const LISTS: ReadonlySet<string> = new Set(['trims', 'assembly'] satisfies ReferenceKind[]);

const DRAWING = 'drawing' satisfies ReferenceKind;

/** Asides that an attendee sees. */
const ASIDES: ReadonlySet<string> = new Set(['tip', 'caution']);
/** What is for the demonstrator alone, and never reaches a sheet. */
export const HOST = 'host';

/**
 * Our directives; whatever merely looks like one stays the text that was typed. One that has nothing to say, which the
 * proof reports, leaves the name in it; a drawing leaves nothing.
 */
export function directiveHandlers(setting: ProseSetting, place: Place): Handlers {
  return {
    textDirective: (_, node: Node<'textDirective'>) => {
      const said = REFERENCES.has(node.name)
        ? setting.refer(node.name as ReferenceKind, textWithin(node).trim())
        : undefined;
      if (said) return place(said);
      return isOurs(node.name) ? textOf(textWithin(node).trim()) : asWritten(node, setting);
    },
    leafDirective: (_, node: LeafDirective) => {
      const figure = drawingOf(node, setting);
      if (figure) return place(figure.html, 'div');
      return node.name === DRAWING ? undefined : elementOf('p', [asWritten(node, setting)]);
    },
    containerDirective: (state: State, node: Node<'containerDirective'>) => {
      if (node.name === HOST) return undefined;
      if (!ASIDES.has(node.name)) return elementOf('p', [asWritten(node, setting)]);
      const word = elementOf('p', [textOf(setting.voice.say(node.name))], { className: ['aside-word'] });
      return elementOf('aside', [word, textOf('\n'), ...state.all(node)], {
        className: [node.name],
        role: 'note',
      });
    },
  };
}

function isOurs(name: string): boolean {
  return REFERENCES.has(name) || LISTS.has(name);
}

/** The list that `:trims[box]` or `:assembly[box]` stands for; undefined for anything else. */
export function listOf(node: PhrasingContent, setting: ProseSetting, place: Place): Element | undefined {
  if (node.type !== 'textDirective' || !LISTS.has(node.name)) return undefined;
  const list = setting.refer(node.name as ReferenceKind, textWithin(node).trim());
  return list && place(list, 'div');
}

/** The figure a `::drawing{of=… view=…}` asks for; undefined for any other directive. */
export function drawingOf(node: LeafDirective, { draw }: ProseSetting): Figure | undefined {
  if (node.name !== DRAWING) return undefined;
  const attributes = Object.fromEntries(
    Object.entries(node.attributes ?? {}).map(([key, value]) => [key, value ?? '']),
  );
  return draw(attributes.of ?? '', attributes);
}
