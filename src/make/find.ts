import { mergeTold, type Told } from '../proof/told.ts';
import { templatesDigest } from '../recall/program.ts';
import type { Recall, Spot } from '../recall/recall.ts';
import { examineTogether } from '../recall/together.ts';

/** All that is found in projects of a workspace, in its settings and in its shared files, each once. */
export async function findAll(recall: Recall, spots: readonly Spot[]): Promise<readonly Told[]> {
  const { site, shared } = await recall.basisFindings();
  await examineTogether(recall, spots);
  const own: (readonly Told[])[] = [];
  for (const spot of spots) {
    own.push(await recall.findings(spot));
    recall.release(spot);
  }
  return mergeTold([...site, ...shared, ...own.flat(), ...(await findInWords(recall, spots))]);
}

/** What the languages lack that are asked for. */
export async function findInWords(recall: Recall, spots: readonly Spot[]): Promise<readonly Told[]> {
  const asked = await recall.languages(spots);
  return recall.languageFindings(asked, templatesDigest(), async () => {
    const [{ languageFindings }, { readLabels }, { tellFinding }] = await Promise.all([
      import('./languages.ts'),
      import('./package-files.ts'),
      import('../proof/tell.ts'),
    ]);
    return languageFindings(asked, readLabels()).map((finding) => tellFinding(finding));
  });
}
