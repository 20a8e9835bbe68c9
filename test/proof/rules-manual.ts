import type { RuleId } from '../../src/project/finding.ts';
import { printFindings } from '../../src/proof/print.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import type { Severity } from '../../src/proof/told.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { ruleDrawing } from './rule-drawings.ts';
import { EXAMPLE_SHEET, findingsIn } from './workspace.ts';
import { filesOf, RULES, SHOWN, type WrittenExample } from './written-example.ts';

const SEVERITY: Readonly<Record<Severity, string>> = {
  error: '**Error.** The project keeps its last good sheet until this is fixed.',
  warning: '**Warning.** The sheet is made, but take a look at it.',
  note: '**Note.** The sheet is made; you may have meant it.',
};

const HEAD: readonly string[] = [
  '# What the proof checks',
  '',
  'Every finding names the rule it comes from, in brackets at the end of its first line. This page is written from the',
  'rules themselves, and the tests run its very examples. To write it again when a rule has changed:',
  '`UPDATE=1 npx vitest run test/proof/manual.test.ts`.',
  '',
  'Where a rule can be seen, a picture shows what fails beside what passes. Continuous lines are cut, chain lines fold away',
  'from you, and dashed lines fold toward you. What is hatched is cut away. Dots are glue on this side, crosses glue on the',
  'far side. The outside faces you.',
  '',
  '| rule | severity | what it checks |',
  '| --- | --- | --- |',
];

/**
 * The page of the documentation that lists every rule: what it checks, why, a sheet that fails with its finding, and a sheet that passes. Markdown text, ending with a line break.
 */
export function rulesManual(): string {
  const rows = RULES.map(([id, { severity, summary }]) => `| [${id}](#${id}) | ${severity} | ${summary} |`);
  return [...HEAD, ...rows, '', ...RULES.flatMap(section)].join('\n');
}

let drawings: ReadonlyMap<RuleId, string> | undefined;

/** The pictures of the rules that can be shown, as SVG files. */
export function ruleDrawings(): ReadonlyMap<RuleId, string> {
  drawings ??= new Map(
    SHOWN.flatMap((shown): [RuleId, string][] => {
      const drawing = ruleDrawing(shown);
      return drawing === undefined ? [] : [[shown.id, drawing]];
    }),
  );
  return drawings;
}

function section([ruleId, rule]: (typeof RULES)[number]): string[] {
  const shown = SHOWN.find(({ id }) => id === ruleId);
  return [
    `## ${ruleId}`,
    '',
    rule.summary,
    '',
    rule.why,
    '',
    SEVERITY[rule.severity],
    '',
    ...(shown ? failing(shown.fails, saidOf(ruleId, shown.fails)) : []),
    ...(shown ? ['This passes:', '', ...exampleText(shown.passes)] : []),
    ...(ruleDrawings().has(ruleId) ? [`![What fails, and what passes](rules/${ruleId}.svg)`, ''] : []),
  ];
}

function failing(example: WrittenExample, said: string): string[] {
  const says = said === '' ? [] : ['with:', '', ...fenced('text', said)];
  return ['This fails:', '', ...exampleText(example), ...says];
}

/** What the rule says of its failing example, as it is printed; nothing for what only a disk can show. */
function saidOf(id: RuleId, fails: WrittenExample): string {
  const workspace = readWorkspaceFromTexts(filesOf(fails));
  const findings = mergeFindings(findingsIn(workspace));
  return printFindings(
    findings.filter(({ rule }) => rule === id),
    { summary: false },
  );
}

function exampleText(example: WrittenExample): string[] {
  const files = Object.entries(filesOf(example));
  return files.flatMap(([path, text]) => fileText(path, text, files.length > 1));
}

function fileText(path: string, text: string, named: boolean): string[] {
  if (text === '') return [`\`${path}\`, ${path.endsWith('.md') ? 'an empty file' : 'a picture'}`, ''];
  if (text.includes('\u0000')) return [`\`${path}\`, a file that holds no text`, ''];
  const lead = named || path !== EXAMPLE_SHEET ? [`\`${path}\``, ''] : [];
  return [...lead, ...fenced(path.endsWith('.yaml') ? 'yaml' : 'markdown', text)];
}

function fenced(language: string, text: string): string[] {
  return [`\`\`\`\`${language}`, ...text.trimEnd().split('\n'), '````', ''];
}
