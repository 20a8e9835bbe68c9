import type { Element, ElementContent } from 'hast';
import type { Options } from 'remark-rehype';
import type { Figure } from '../drawing/figures.ts';
import type { SafeHtml } from '../words/safe-html.ts';
import type { Voice } from '../words/voice.ts';
import type { TextPart } from './measured-text.ts';
import type { Refer } from './references.ts';

/** What a stretch of Markdown is set with. */
export type ProseSetting = {
  readonly voice: Voice;
  /** The whole source file, for what only looked like a directive. */
  readonly source: string;
  /** The level of the highest heading within. */
  readonly headings: 2 | 3 | 4;
  readonly refer: Refer;
  readonly measured: (text: string) => readonly TextPart[];
  readonly draw: (of: string, attributes: Readonly<Record<string, string>>) => Figure | undefined;
  readonly picture: (path: string, alternative: string, caption?: string) => Figure | undefined;
};

export type Handlers = NonNullable<Options['handlers']>;
export type State = Parameters<NonNullable<Handlers[keyof Handlers]>>[0];

/** Puts markup of ours in the tree as a numbered slot, filled once the tree is sanitised. */
export type Place = (content: SafeHtml, kind?: 'span' | 'div') => Element;

export function elementOf(
  tagName: string,
  children: ElementContent[],
  properties: Element['properties'] = {},
): Element {
  return { type: 'element', tagName, properties, children };
}

export function textOf(value: string): ElementContent {
  return { type: 'text', value };
}

type Offset = { readonly offset?: number | undefined };
type Positioned = { readonly position?: { readonly start: Offset; readonly end: Offset } | undefined };

/** The very characters of a node, for what stays text. */
export function asWritten({ position }: Positioned, { source }: ProseSetting): ElementContent {
  return textOf(source.slice(position?.start.offset ?? 0, position?.end.offset ?? 0));
}
