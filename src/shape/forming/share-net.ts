import { Length } from '../../measure/length.ts';
import type { Net } from '../net.ts';
import { type Layout, layoutNet } from './layout.ts';

/** Those used last, by what they were laid out from; some forty kilobytes each, with all that was worked out of it. */
const shared = new Map<string, Net>();
const MOST_SHARED = 600;

/**
 * The net of a layout on paper so thick, and the same one for whoever asks again: cards and boxes of one size come up in
 * project after project, and what is worked out of a net once, by `perNet`, then holds for all of them. What is cut out of
 * it, or decorates it, makes another net of it; rounded corners know where they are written, so theirs is their own.
 */
export function shareNet(layout: Layout, caliper: Length): Net {
  if (layout.corners) return layoutNet(layout);
  const key = JSON.stringify([caliper, layout], writeExactly);
  const net = shared.get(key) ?? layoutNet(layout);
  shared.delete(key);
  shared.set(key, net);
  const [oldest] = shared.keys();
  if (shared.size > MOST_SHARED && oldest !== undefined) shared.delete(oldest);
  return net;
}

function writeExactly(_key: string, value: unknown): unknown {
  return value instanceof Length ? String(value) : value;
}
