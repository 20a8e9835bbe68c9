import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { findObstacles } from '../../src/kit/obstacles.ts';
import { languageFindings } from '../../src/make/languages.ts';
import { painting } from '../../src/make/painting.ts';
import { readPictures } from '../../src/make/pictures.ts';
import { Length } from '../../src/measure/length.ts';
import type { Finding, RuleId } from '../../src/project/finding.ts';
import { buildShapes } from '../../src/shape/build.ts';
import { loadWorkspace } from '../../src/shape/workspace.ts';
import { languagesAsked } from '../make/asked.ts';
import { EXAMPLE_SHEET, findingsIn, workspaceOf } from './workspace.ts';
import type { WrittenExample } from './written-example.ts';

/** A program with two languages, the second of which lacks a word. */
const LABELS = new Map([
  ['en', { language: 'en', texts: new Map(Object.entries({ time: 'Time', level: 'Level' })) }],
  ['de', { language: 'de', texts: new Map(Object.entries({ time: 'Dauer' })) }],
]);

const BENCH = { kerf: Length.zero, trimMargin: Length.zero, trimmer: Length.of(12, 1, 'in') };

/** Everything found in an example of a rule, by what looks at a workspace on the occasion on which the rule speaks. */
export async function foundIn(id: RuleId, example: WrittenExample): Promise<readonly Finding[]> {
  if (id === 'not-text' || id === 'unreadable-file' || id === 'unreadable-picture')
    return foundOnDisk(example);
  const workspace = workspaceOf(example.sheet, example.files);
  const proofed = findingsIn(workspace);
  if (id === 'unknown-language' || id === 'missing-label') {
    return [...proofed, ...languageFindings(languagesAsked(workspace), LABELS)];
  }
  if (id !== 'cannot-be-kitted') return proofed;
  return [
    ...proofed,
    ...workspace.projects.flatMap((project) => findObstacles(project, buildShapes(project), BENCH)),
  ];
}

/** Only a disk can hold a file that cannot be opened, that is no text, or a picture that is looked at when it is made. */
async function foundOnDisk({ sheet, files }: WrittenExample): Promise<readonly Finding[]> {
  const root = mkdtempSync(join(tmpdir(), 'sheetwright-rule-'));
  const isFolder = Object.keys(files).some((path) => path.startsWith(`${EXAMPLE_SHEET}/`));
  for (const [path, text] of Object.entries(isFolder ? files : { ...files, [EXAMPLE_SHEET]: sheet })) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
  const workspace = await loadWorkspace(root, { namedFrom: root });
  const looked = await Promise.all(
    workspace.projects.map((project) =>
      readPictures(join(root, project.folder), project, join(root, '.cache'), painting),
    ),
  );
  rmSync(root, { recursive: true });
  return [...findingsIn(workspace), ...looked.flatMap(({ findings }) => findings)];
}
