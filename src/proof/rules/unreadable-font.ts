import type { Font, ReadFont } from '../../project/font-file.ts';
import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

type Facts = {
  readonly path: string;
  /** What reading it found, or that letters can't be drawn with it. */
  readonly problem: Exclude<ReturnType<ReadFont>, Font>['problem'] | 'damaged';
};

export const unreadableFont: Rule<Facts> = {
  severity: 'error',
  summary: 'The font that `site.yaml` names is a file of the workspace that can be read as one.',
  why: 'Letters that a font was to bring would be missing from every paper. A font for the web in WOFF2 is packed in a way that we do not read: the same font is always offered as TTF or OTF, too.',
  fails: { files: { 'site.yaml': 'font: fonts/lost.ttf\n' }, blames: 'fonts/lost.ttf' },
  passes: { files: { 'site.yaml': 'title: Paper bench\n' } },
  say: ({ path, problem }) => ({ message: `${quote(path)} ${PROBLEMS[problem]}`, remedy: REMEDIES[problem] }),
};

const PROBLEMS = {
  missing: 'is not in the workspace',
  outside: 'lies outside the workspace',
  'no font': 'is not a font that can be read',
  'too large': 'is larger than 20 MB',
  damaged: 'is a font whose letters cannot be drawn',
} as const;

const REMEDIES = {
  missing: 'put the file there, or fix its name (capital letters matter)',
  outside: 'copy it into the workspace, to fonts/ say',
  'no font': 'save it again as TTF, OTF or WOFF, with characters by Unicode',
  damaged: 'get the file again from where it came from, or take another font',
  'too large': 'take a font of one script, in one weight',
} as const;
