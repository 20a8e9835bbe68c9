import type { Unit } from '../measure/length.ts';
import type { Key } from './grammar.ts';
import { plainly } from './keys.ts';
import type { Reader } from './reader.ts';
import { asChoice, asYes } from './values.ts';
import type { YamlNode } from './yaml-node.ts';

/** A key that says yes; no where it is left out. */
export function flag(says: string): Key<boolean, true> {
  return plainly(asYes, 'no', says);
}

/** The key `unit`, of a sheet's measurements and of a shared file. */
export const UNIT: Key<Unit, true> = plainly(
  asChoice(['in', 'mm', 'cm'] as const),
  'in',
  'What a number without a unit is in: `in`, `mm` or `cm`.',
);

/** The unit a map states, which must be known before anything else of it is read; nothing is reported. */
export function statedUnit(node: YamlNode, reader: Reader): Unit {
  const entries = node.kind === 'map' ? node.entries : [];
  const byKey = new Map(entries.map((entry) => [entry.key.text, entry]));
  const muted = { ...reader, report: () => {} };
  return UNIT.read({ entries: byKey, spot: { key: '', at: node.at }, reader: muted }, 'unit') ?? 'in';
}
