/**
 * Counts the calls from a sheet's text to a metric length: `node bench/call-depth.js`, of what is compiled in `dist/modules`.
 *
 * How deep our own calls are nested where a length of a form is read from the text of a workspace, and then, from
 * `examine` on, where it is rounded for the metric edition.
 */
import { examine } from '../dist/modules/examine/examine.js';
import { Length } from '../dist/modules/measure/length.js';
import { readWorkspaceFromTexts } from '../dist/modules/shape/workspace.js';

const SHEET = `---
title: Box
measurements:
  pieces:
    box: { form: tray, inside: 3 x 2 x 1 }
    front: { cut: 2 x 1, on: box.floor }
---
## Fold :piece[box]
`;

/** The deepest calls that ended in a function, by its name, the outermost first. */
const deepest = new Map();

/** Notes the calls that lead to what is called instead of a method. */
function noting(method) {
  return function (...parameters) {
    const lines = new Error().stack.split('\n').filter((line) => line.includes('/dist/modules/'));
    const calls = lines
      .map((line) => line.replace(/^\s*at |\(?file:.*\/dist\/modules\/|:\d+\)?$/gu, ''))
      .reverse();
    const [name] = calls.at(-1).split(' ');
    if (calls.length > (deepest.get(name)?.length ?? 0)) deepest.set(name, calls);
    return method.apply(this, parameters);
  };
}

Error.stackTraceLimit = Number.POSITIVE_INFINITY;
// The last thing that reading a length and that rounding one does with lengths.
Length.of = noting(Length.of);
Length.prototype.over = noting(Length.prototype.over);

const workspace = readWorkspaceFromTexts({ 'box/sheet.md': SHEET });
const read = deepest.get('parseLength');
examine(workspace);
const rounded = deepest.get('roundToStep');

console.log([`${read.length} calls to read a length:`, ...read].join('\n  '));
console.log([`${rounded.length} calls to round it:`, ...rounded].join('\n  '));
console.log(`${read.length + rounded.length} calls from the sheet's text to a metric length`);
