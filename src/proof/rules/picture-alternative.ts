import { everyProse } from '../../project/prose/prose.ts';
import type { Rule } from '../rule.ts';
import { quote } from '../words.ts';

type Facts = {
  readonly path: string;
  /** What was said instead of what it shows; empty where nothing was. */
  readonly alternative: string;
};

export const pictureAlternative: Rule<Facts> = {
  severity: 'warning',
  summary: 'Every picture says in words what it shows.',
  why: 'People who cannot see the picture hear these words instead. They go between the brackets: `![The box flat, flaps tapered](photos/flat.jpg)`. The name of a file, or "photo", says nothing.',
  fails: {
    body: '## Cut\n![](photos/cut.jpg)\n',
    files: { 'card/photos/cut.jpg': '' },
    blames: 'photos/cut.jpg',
  },
  passes: { with: '![The card, cut and folded]', insteadOf: '![]' },
  ownEditionOnly: true,
  *check({ project }) {
    for (const { path, alternative } of everyProse(project).flatMap(({ pictures }) => pictures)) {
      const words = alternative.trim();
      if (words !== '' && !SAYS_NOTHING.test(words)) continue;
      yield { at: path.at, facts: { path: path.value, alternative: words } };
    }
  },
  say: ({ path, alternative }) => ({
    message:
      alternative === ''
        ? `the picture ${quote(path)} has no words for those who cannot see it`
        : `${quote(alternative)} says nothing about the picture to those who cannot see it`,
    remedy: `say between the brackets what it shows: ![The box flat, flaps tapered](${path})`,
  }),
};

/** A file's name, or a word that only says that there is a picture. */
const SAYS_NOTHING =
  /^(?:\S+\.(?:jpe?g|png|webp|avif|gif|svg|heic)|(?:img|dsc|pxl)[_-]?\d+|image|picture|photo|foto)$/iu;
