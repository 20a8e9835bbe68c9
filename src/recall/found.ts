import type { Examination, Study } from '../examine/study.ts';
import { sharedFiles, type WorkspaceTexts } from '../project/workspace-texts.ts';
import type { Told } from '../proof/told.ts';
import { filesOf, type ToldData, writeTold } from './told-data.ts';

/** What was found in a project, and the language it asks for: plain data. */
export type Found = { readonly findings: readonly ToldData[]; readonly language?: LanguageData };
type LanguageData = readonly [language: string, start: number, end: number];

/** Something worked out of a project, and the inputs it followed from beside its sheet and its ledger. */
export type Worked<T> = { readonly data: T; readonly uses: readonly string[] };

/** What was found in a project that has been examined. */
export function foundIn(
  texts: WorkspaceTexts,
  { tell }: Pick<Examination, 'tell'>,
  { project, findings, uses }: Study,
): Worked<Found> {
  const told = tell(findings);
  const { lang } = project;
  const language = lang && { language: [lang.value, lang.at.start, lang.at.end] as const };
  const data = { findings: told.map(writeTold), ...language };
  return { data, uses: [...uses, ...wholeFilesIn(told, texts)] };
}

/** Where a finding stands in a file that the project does not have to itself, any line above it counts. */
function wholeFilesIn(told: readonly Told[], texts: WorkspaceTexts): readonly string[] {
  const files = new Set(told.flatMap(filesOf));
  const isShared = sharedFiles(texts).some((file) => files.has(file));
  const site = texts.files.get('site.yaml');
  return [...(isShared ? ['shared'] : []), ...(site && files.has(site) ? ['site'] : [])];
}
