import type { Length } from '../../measure/length.ts';
import { printDecimal } from '../../measure/print.ts';
import type { DrawingProblem } from '../../project/drawn/drawing-problem.ts';
import type { FileProblem } from '../../project/grammar/outline-grammar.ts';
import type { Rule } from '../rule.ts';
import type { Words } from '../told.ts';
import { quote } from '../words.ts';

type Problem = FileProblem | DrawingProblem;

const LEAF =
  '<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="50mm" viewBox="0 0 50 50"><path d="M5 25 C15 0 35 0 45 25 C35 50 15 50 5 25Z"/></svg>';

export const unreadableOutline: Rule<{ readonly path: string; readonly problem: Problem }> = {
  severity: 'error',
  summary: 'An outline of your own is one closed path of an SVG file, at its real size.',
  why: 'What is cut by a drawing is as large as the drawing says: a file without millimeters or inches could be any size, and with two paths nobody knows which is the outline.',
  fails: {
    pieces: 'leaf: { stock: cream, drawn: shapes/leaf.svg }',
    files: { 'card/shapes/leaf.svg': LEAF.replace('Z"', '"').replace('5 25"', '9 25"') },
    blames: 'shapes/leaf.svg',
  },
  passes: {
    pieces: 'leaf: { stock: cream, drawn: shapes/leaf.svg }',
    files: { 'card/shapes/leaf.svg': LEAF },
  },
  say: ({ path, problem }) => sayProblem(quote(path), problem),
};

function sayProblem(name: string, problem: Problem): Words {
  switch (problem.kind) {
    case 'missing':
      return {
        message: `there is no drawing ${name} in this project's folder`,
        remedy: 'put the file there, or fix its name (capital letters matter)',
      };
    case 'outside':
      return {
        message: `the drawing ${name} is not in this project's folder`,
        remedy: 'copy it into shapes/ and name it from there, such as shapes/leaf.svg',
      };
    case 'too large':
      return {
        message: `${name} is ${problem.kilobytes} kB, and an outline takes no more than ${problem.most} kB`,
        remedy: 'leave only the outline in it',
      };
    case 'no svg':
      return {
        message: `${name} cannot be read as SVG: ${short(problem.what)}`,
        remedy: 'save it again as plain SVG',
      };
    case 'no size':
      return {
        message: `how large ${name} is cannot be known: ${short(problem.what)}`,
        remedy: 'give its <svg> a width and a height in mm or in, and a viewBox',
      };
    case 'stretched':
      return {
        message: `${name} is ${mm(problem.across)} wide, but by its height and its viewBox it would be ${mm(problem.down)}`,
        remedy: 'give its width, its height and its viewBox the same proportions',
      };
    case 'other element':
      return {
        message: `${name} has a <${short(problem.what)}>, and an outline is one path`,
        remedy: 'turn it into a path, or take it out',
      };
    case 'altered':
      return {
        message: `the <${short(problem.what)}> of ${name} has a ${problem.by}, and only the path itself is read`,
        remedy: 'apply it to the path or take it out, and save the drawing again',
      };
    case 'points':
      return {
        message: `the path of ${name} takes ${problem.count} straight cuts, and an outline takes no more than ${problem.most}`,
        remedy: 'simplify it, so that it has fewer points and curves',
      };
    case 'paths':
      return {
        message: `${name} has ${problem.count === 0 ? 'no path' : `${problem.count} paths`}, and an outline is one`,
        remedy:
          problem.count === 0 ? 'draw its outline as a path' : 'join them into one, or take the others out',
      };
    case 'parts':
      return {
        message: `the path of ${name} has ${problem.count} parts, and an outline is one`,
        remedy: 'leave only the outer one',
      };
    case 'no path data':
      return {
        message: `the path of ${name} cannot be read: ${short(problem.what)}`,
        remedy: 'draw it again',
      };
    case 'open':
      return {
        message: `the path of ${name} is not closed: its ends are ${mm(problem.gap)} apart`,
        remedy: 'close it, so that its d ends with Z',
      };
    case 'crosses':
      return {
        message: `the path of ${name} crosses itself ${mm(problem.x)} from its left and ${mm(problem.y)} from its top`,
        remedy: 'draw it so that no line of it meets another',
      };
    case 'size':
      return {
        message: `the path of ${name} is ${mm(problem.x)} wide and ${mm(problem.y)} high`,
        remedy: 'make both 5 mm or more, and no more than 1000 mm',
      };
  }
}

/** What the file says may be as long as the file. */
function short(text: string): string {
  const line = text.replace(/\s+/gu, ' ').trim();
  return line.length > 140 ? `${line.slice(0, 139)}…` : line;
}

function mm(length: Length): string {
  return `${printDecimal(length, 'mm', 1)} mm`;
}
