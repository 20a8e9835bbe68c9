import { sheetWith } from '../example.ts';
import { everyProse } from '../prose.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { quote } from '../words.ts';

const shown = (alternative: string): string =>
  sheetWith({ body: `## Cut\n![${alternative}](photos/cut.jpg)\n` });

export const pictureAlternative: Rule<'picture-alternative'> = {
  id: 'picture-alternative',
  severity: 'warning',
  summary: 'Every picture says in words what it shows.',
  why: 'Who cannot see the picture hears these words instead. They stand between the brackets: `![The box flat, flaps tapered](photos/flat.jpg)`. The name of a file, or "photo", says nothing.',
  fails: { sheet: shown(''), files: { 'card/photos/cut.jpg': '' }, blames: 'photos/cut.jpg' },
  passes: { sheet: shown('The card, cut and folded'), files: { 'card/photos/cut.jpg': '' } },
  ownEditionOnly: true,
  check: ({ project, report }: ProofContext) => {
    for (const { path, alternative } of everyProse(project).flatMap(({ pictures }) => pictures)) {
      const words = alternative.trim();
      if (words !== '' && !SAYS_NOTHING.test(words)) continue;
      report({
        message:
          words === ''
            ? `the picture ${quote(path.value)} has no words for those who cannot see it`
            : `${quote(words)} says nothing about the picture to those who cannot see it`,
        remedy: `say between the brackets what it shows: ![The box flat, flaps tapered](${path.value})`,
        at: path.at,
      });
    }
  },
};

/** A file's name, or a word that only says that there is a picture. */
const SAYS_NOTHING =
  /^(?:\S+\.(?:jpe?g|png|webp|avif|gif|svg|heic)|(?:img|dsc|pxl)[_-]?\d+|image|picture|photo|foto)$/iu;
