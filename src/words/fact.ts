import type { SafeHtml } from './safe-html.ts';

/** A line of the head of a paper: `Time`, `45 minutes`. */
export type Fact = { readonly term: string; readonly value: SafeHtml };
