import { compare } from '../measure/numbers.ts';
import type { Finding } from './finding.ts';
import type { FormGrammar, Workspace } from './model.ts';
import { type ProjectSource, readProject } from './read-project.ts';
import { readShared } from './read-shared.ts';
import { readSite } from './read-site.ts';
import { moneyDecimals } from './reader.ts';
import { slugOf } from './slug.ts';
import { digestOf, type SourceFile } from './source.ts';

/** The files of a workspace, read but not understood. */
type WorkspaceSource = {
  readonly root: string;
  readonly site: SourceFile | undefined;
  readonly shared: readonly SourceFile[];
  readonly projects: readonly ProjectSource[];
  /** The ready-made forms that sheets may name. */
  readonly forms: readonly FormGrammar[];
  /** What could not be read of the settings and the shared files. */
  readonly findings: readonly Finding[];
};

/** Reads a whole workspace from its files' texts. */
export function readWorkspace({
  root,
  site: settings,
  shared: files,
  projects,
  forms,
  findings,
}: WorkspaceSource): Workspace {
  const site = readSite(settings);
  const bench = { moneyDecimals: moneyDecimals(site.currency), forms };
  const ofSettings = findings.filter(({ at }) => at.file === settings);
  const ofShared = findings.filter(({ at }) => at.file !== settings);
  const shared = readShared(files, bench, ofShared);
  const basis = digestOf([settings, ...files].flatMap((file) => (file ? [file.path, file.text] : [])));
  const read = projects.map((source) =>
    readProject({ ...source, ...bench, slug: slugOf(source.folder), shared, units: site.units, basis }),
  );
  return {
    root,
    site: { ...site, findings: [...ofSettings, ...site.findings] },
    projects: read.toSorted((a, b) => compare(a.slug, b.slug) || compare(a.folder, b.folder)),
    findings: [...ofShared, ...shared.findings],
  };
}
