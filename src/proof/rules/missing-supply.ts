import { languageOf, wordsIn } from '../../project/language.ts';
import { wordFinder } from '../../project/prose/word-finder.ts';
import { type Place, textAt } from '../../project/source.ts';
import type { ProofContext, Rule } from '../rule.ts';
import { sentencesOf } from '../sentences.ts';
import { quote } from '../words.ts';

type Facts = {
  readonly tool: string;
  /** The sheet has no list of supplies at all. */
  readonly hasNone: boolean;
};

export const missingSupply: Rule<Facts> = {
  severity: 'note',
  summary: 'Every tool that a step calls for is among the supplies.',
  why: 'People lay out what the list says, and a bone folder that first turns up in step four stops the whole table. Only a few plain words are looked for, in the language of the sheet. A sheet with no supplies at all gets one finding, at the first tool. Notes for the demonstrator, and sentences with "if" or "without" in them are skipped.',
  fails: {
    head: 'supplies:\n  - { item: Score board, kind: tool }',
    pieces: 'card: { stock: cream, cut: 4 x 5 }',
    body: '## Fold\nFold :piece[card] and work the fold with a bone folder.\n',
    blames: 'bone folder',
  },
  passes: {
    with: '- { item: Score board, kind: tool }\n  - Bone folder',
    insteadOf: '- { item: Score board, kind: tool }',
  },
  ownEditionOnly: true,
  *check(context) {
    // What a head that cannot be read lists is not known.
    if (!context.project.readable) return;
    const { supplies } = context.project;
    const hasNone = supplies.length === 0;
    const sentences = saidInSteps(context);
    const supplied = supplies.flatMap(({ item, instead, kind }) => [
      item.value,
      instead?.value ?? '',
      kind.value,
    ]);
    // Few tools are named at all, and a pattern takes longer to prepare than to use.
    const missing = findersFor(context).flatMap(({ named, called }) => {
      const [first] = sentences.flatMap((sentence) => find(named, sentence) ?? []);
      return first && !supplied.some((item) => called.test(item)) ? [first] : [];
    });
    const told = hasNone ? missing.toSorted((a, b) => a.start - b.start).slice(0, 1) : missing;
    yield* told.map((at) => ({ at, facts: { tool: textAt(at), hasNone } }));
  },
  say: ({ tool, hasNone }) => {
    const entry = `{ item: ${tool}, kind: ${/ink|pad/iu.test(tool) ? 'ink' : 'tool'} }`;
    return hasNone
      ? {
          message: `${quote(tool)} is used here, but the sheet lists no supplies`,
          remedy: `list what is needed at the head of the sheet, under "supplies:", such as ${entry}`,
        }
      : {
          message: `${quote(tool)} is used here, but is not among the supplies`,
          remedy: `add it to "supplies:", such as ${entry}`,
        };
  },
};

/** What finds a tool in a step, and what finds it among the supplies, by whichever of its names. */
type ToolFinder = { readonly named: RegExp; readonly called: RegExp };

const finders = new Map<string, readonly ToolFinder[]>();

/** Those of the tools of a project's language; made once, for every project asks for them. */
function findersFor({ workspace, project }: ProofContext): readonly ToolFinder[] {
  const tools = wordsIn(languageOf(project, workspace.site), 'reads-tools');
  const known =
    finders.get(tools) ??
    tools.split(';').map((tool) => {
      const [names = '', others = ''] = tool.split('|');
      return { named: wordFinder(names), called: wordFinder(`${names},${others}`) };
    });
  finders.set(tools, known);
  return known;
}

/** Every sentence of a step that may ask for a tool. */
function saidInSteps({ workspace, project }: ProofContext): readonly Place[] {
  const unneeded = wordFinder(wordsIn(languageOf(project, workspace.site), 'reads-unneeded'));
  return project.steps
    .flatMap(({ prose }) => sentencesOf(prose, project.file))
    .flatMap(({ at, isForHost }) => (isForHost || unneeded.test(textAt(at)) ? [] : [at]));
}

function find(words: RegExp, at: Place): Place | undefined {
  const found = words.exec(textAt(at));
  if (!found) return undefined;
  const start = at.start + found.index;
  return { ...at, start, end: start + found[0].length };
}
