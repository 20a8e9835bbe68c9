import { findOnlyThere, hasForeignPieces, otherProject } from '../edition/edition.ts';
import { editionsOf, editionWritten } from '../edition/editions.ts';
import { settleEdition } from '../edition/settle.ts';
import { type Finding, findMistake } from '../project/finding.ts';
import type { Commons, Project, Workspace } from '../project/model.ts';
import { watchSite } from '../project/reading/read-site.ts';
import { digestOf, sourceFile, startOf } from '../project/source.ts';
import { watchMap } from '../project/watch.ts';
import { readCommons, readSheet, type WorkspaceSource } from '../project/workspace.ts';
import type { WorkspaceTexts } from '../project/workspace-texts.ts';
import { projectLinks } from '../proof/links.ts';
import { proofProject } from '../proof/proof.ts';
import { isStopped, joinVariants, tellFinding } from '../proof/tell.ts';
import { buildShapes } from '../shape/build.ts';
import { forms } from '../shape/forms/index.ts';
import { outlines } from '../shape/outlines/index.ts';
import type { Examination, Study } from './study.ts';
import { settingsIn, sharedIn } from './values.ts';

/** Studies are kept by what their projects were read from, so that a preview looks again at what changed alone. */
const kept: Map<string, Study> = new Map<string, Study>();
const MOST_KEPT = 50;

/** Examines projects of a workspace, every one unless some are named: the one way from what was read to what is shown. */
export function examine(
  workspace: Workspace,
  projects: readonly Project[] = workspace.projects,
): readonly Study[] {
  return projects.map((project) => examineProject(workspace, project));
}

/** Examines one project. One that was examined before, with the same texts, is not looked at again. */
function examineProject(commons: Commons, project: Project): Study {
  const key = keyOf(commons, project);
  const study = kept.get(key) ?? studyProject(commons, project);
  kept.delete(key);
  kept.set(key, study);
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
  return study;
}

/** Opens a workspace to read what its projects have in common now, and each project when it is asked for. */
export function openExamination(texts: WorkspaceTexts): Examination {
  const source = { ...texts, forms, outlines };
  const commons = readCommons(source);
  return {
    commons,
    values: { ...settingsIn(texts), ...sharedIn(commons) },
    study: (folder) => {
      const project = readOrRefuse(source, commons, folder);
      if (!project) throw new Error(`there is no sheet in ${folder}`);
      return examineProject(commons, project);
    },
    tell: (findings) => findings.map((finding) => tellFinding(finding)),
  };
}

/** Reads a sheet; one whose reading breaks is as one that cannot be opened, and says so. */
function readOrRefuse(source: WorkspaceSource, commons: Commons, folder: string): Project | undefined {
  try {
    return readSheet(source, commons, folder);
  } catch (error) {
    const path = `${folder}/sheet.md`;
    const empty = sourceFile(source.files.get(path)?.path ?? path, '');
    const findings = [findMistake('the reading of this project', error, startOf(empty))];
    return readSheet(
      { ...source, files: new Map([...source.files, [path, empty]]), findings },
      commons,
      folder,
    );
  }
}

/** Beside its own texts a project is looked at together with those that have the same address, or that it links to. */
function keyOf({ root, addresses }: Commons, project: Project): string {
  const { slug, content } = project;
  const alike = addresses.get(slug) ?? [];
  const linked = projectLinks(project).flatMap(({ value }) => (addresses.has(value) ? [value] : []));
  return digestOf([root, content, ...alike, ...linked]);
}

/** A project, and each of its other variants. */
function studyProject(commons: Commons, project: Project): Study {
  const uses = new Set(project.uses);
  const watched = watchCommons(commons, uses);
  const own = studyVariant(watched, project);
  const others = project.others.map((other) => studyVariant(watched, other));
  if (others.length === 0) return { ...own, uses };
  const findings = joinVariants(
    [own, ...others].map((each) => ({ name: each.project.variant?.id.value ?? '', findings: each.findings })),
  );
  const editions = { ...own.editions, others: others.map((other) => other.editions) };
  return { ...own, editions, findings, uses };
}

function watchCommons(commons: Commons, uses: Set<string>): Commons {
  const note = (input: string): unknown => uses.add(input);
  return {
    ...commons,
    site: watchSite(commons.site, note),
    addresses: watchMap(commons.addresses, 'addresses', note),
  };
}

/**
 * A project with an error as written is not made in another edition, where the error would only come back in other
 * numbers; nor is an edition that is printed nowhere. Where we break on a project, the others go on, and it keeps its
 * last good sheet.
 */
function studyVariant(workspace: Commons, written: Project): Omit<Study, 'uses'> {
  try {
    const asWritten = { project: written, shapes: buildShapes(written) };
    const own = hasForeignPieces(asWritten)
      ? settleEdition(workspace, written, asWritten, { ...written, pieces: new Map() })
      : { edition: asWritten, findings: [] };
    const { project, shapes } = own.edition;
    const found = [...own.findings, ...proofProject(workspace, project, shapes)];
    const isAlone = project.units === editionWritten(project) || isStopped(found, false);
    if (isAlone) return { project, shapes, editions: editionsOf(own.edition), findings: found };
    const other = settleEdition(workspace, written, own.edition, otherProject(project));
    const there = findOnlyThere(workspace, other.edition, found);
    const findings = [...found, ...other.findings, ...there];
    return { project, shapes, editions: editionsOf(own.edition, other.edition, other.settled), findings };
  } catch (error) {
    const shapes = { nets: new Map(), layers: [], findings: [] };
    const mistake = findMistake('the examination of this project', error, startOf(written.file));
    const editions = editionsOf({ project: written, shapes });
    return { project: written, shapes, editions, findings: [...written.findings, mistake] };
  }
}

/** Everything that was found: in the settings, in the shared files and in the projects examined. */
export function findingsOf(workspace: Workspace, studies: readonly Study[]): readonly Finding[] {
  return [...workspace.site.findings, ...workspace.findings, ...studies.flatMap(({ findings }) => findings)];
}
