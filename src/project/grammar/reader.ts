import type { Unit } from '../../measure/length.ts';
import type { Finding } from '../finding.ts';
import { type At, type Place, type SourceFile, textAt } from '../source.ts';
import type { YamlNode } from '../yaml/yaml-node.ts';
import type { FormGrammar } from './form-grammar.ts';
import type { OutlineGrammar, ReadDrawing } from './outline-grammar.ts';

export type SharedSection = 'stock' | 'supplies' | 'pieces';

/** A value of `shared/`, unread. */
export type SharedValue = { readonly name: At<string>; readonly value: YamlNode };

/** What the files of `shared/` offer. */
export type Shared = {
  readonly values: Readonly<Record<SharedSection, ReadonlyMap<string, SharedValue>>>;
  /** Every shared file, with the unit of its bare numbers. */
  readonly units: ReadonlyMap<SourceFile, Unit>;
  /** What is wrong in the files themselves, whoever uses them. */
  readonly findings: readonly Finding[];
  /** Why one of the files could not be read at all: the cause of every name in it that is not found. */
  readonly trouble?: Finding | undefined;
};

export const NOTHING_SHARED: Shared = {
  values: { stock: new Map(), supplies: new Map(), pieces: new Map() },
  units: new Map(),
  findings: [],
};

/** What is ready-made, for sheets to name. */
export type Catalog = {
  readonly forms: readonly FormGrammar[];
  readonly outlines: readonly OutlineGrammar[];
};

/** What every part of the reader shares: where findings go, and what bare numbers mean. */
export type Reader = Catalog & {
  /** `usedAt` is where a value of `shared/` is taken in that it was found in. */
  readonly report: (finding: Finding, usedAt?: Place) => void;
  /** The unit the sheet is written in; a shared file has one of its own. */
  readonly unit: Unit;
  /** Decimals of the currency: 2 for dollars, 0 for yen. */
  readonly moneyDecimals: number;
  /** Reads a drawing of the project; there is none to read from where a shared file is looked at by itself. */
  readonly drawing?: ReadDrawing;
  /** What `shared.…` names. */
  readonly shared: Shared;
};

/** The unit of a bare number. */
export function unitAt({ file }: Place, { unit, shared }: Reader): Unit {
  return shared.units.get(file) ?? unit;
}

/** Reports that a value is not of the kind its key takes. */
export function refuse(node: YamlNode, key: string, expected: string, { report }: Reader): undefined {
  if (node.kind === 'nothing' && node.isTold) return;
  const isEmpty = node.kind === 'nothing' || (node.kind === 'text' && node.text === '');
  const actual = isEmpty ? '' : shown(node.at);
  report({ rule: 'unexpected-value', at: node.at, facts: { key, expected, actual } });
}

/** Reports that a key, or what belongs behind it, is not there. */
export function reportMissing(facts: Finding<'missing-value'>['facts'], at: Place, { report }: Reader): void {
  report({ rule: 'missing-value', at, facts });
}

/** The characters of a place, on one line and no longer than a message can carry. */
export function shown(place: Place): string {
  const text = textAt(place).replace(/\s+/gu, ' ').trim();
  return text.length > 60 ? `${text.slice(0, 59)}…` : text;
}

/** Asking `Intl` takes as long as reading a short sheet. */
const decimalsOf = new Map<string, number>();

/** How many decimals a currency has by ISO 4217, as `Intl` knows it. */
export function moneyDecimals(currency: string): number {
  const options = { style: 'currency', currency } as const;
  const decimals =
    decimalsOf.get(currency) ??
    new Intl.NumberFormat('en', options).resolvedOptions().maximumFractionDigits ??
    2;
  decimalsOf.set(currency, decimals);
  return decimals;
}

/** Reports a short name that no reference could name, for what follows a dot is a part. */
export function reportDotted(name: string, at: Place, { report }: Pick<Reader, 'report'>): void {
  if (!name.includes('.')) return;
  report({ rule: 'unexpected-value', at, facts: { misfit: 'dot in a name', actual: name } });
}
