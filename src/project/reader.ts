import type { Unit } from '../measure/length.ts';
import type { Finding } from './finding.ts';
import type { FormGrammar } from './model.ts';
import type { SharedValues } from './shared.ts';
import type { Place, SourceFile } from './source.ts';
import type { YamlNode } from './yaml-tree.ts';

/** What every part of the reader shares: where findings go, and what bare numbers mean. */
export type Reader = {
  readonly report: (finding: Finding) => void;
  /** The unit of a bare number: a shared file has one of its own. */
  readonly unitIn: (file: SourceFile) => Unit;
  /** Decimals of the currency: 2 for dollars, 0 for yen. */
  readonly moneyDecimals: number;
  /** The ready-made forms there are. */
  readonly forms: readonly FormGrammar[];
  /** What `shared.…` names. */
  readonly shared: SharedValues;
};

/** Reads one value; what it cannot take it reports, and gives undefined. `key` names it in the finding. */
export type ReadValue<T> = (node: YamlNode, key: string, reader: Reader) => T | undefined;

/** Reports that a value is not of the kind its key takes. */
export function refuse(node: YamlNode, key: string, expected: string, reader: Reader): undefined {
  const { at } = node;
  const actual = node.kind === 'nothing' ? '' : shown(at);
  reader.report({ rule: 'unexpected-value', at, facts: { key, expected, actual } });
}

/** The characters of a place, on one line and no longer than a message can carry. */
export function shown({ file, start, end }: Place): string {
  const text = file.text.slice(start, end).replace(/\s+/gu, ' ').trim();
  return text.length > 60 ? `${text.slice(0, 59)}…` : text;
}

/** How many decimals a currency has by ISO 4217, as `Intl` knows it. */
export function moneyDecimals(currency: string): number {
  const options = { style: 'currency', currency } as const;
  return new Intl.NumberFormat('en', options).resolvedOptions().maximumFractionDigits ?? 2;
}
