import { findingsOf as everyFinding, examine } from '../../src/examine/examine.ts';
import type { Finding } from '../../src/project/finding.ts';
import type { Workspace } from '../../src/project/model.ts';
import { isWholeFile } from '../../src/project/source.ts';
import { mergeFindings } from '../../src/proof/tell.ts';
import type { Told } from '../../src/proof/told.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';
import { type SheetParts, sheetWith } from './sheet-with.ts';

/** Where an example's sheet stands in its small workspace. */
export const EXAMPLE_SHEET = 'card/sheet.md';

/** The workspace of one sheet and whatever else it needs. */
export function workspaceOf(sheet: string, files: Readonly<Record<string, string>> = {}): Workspace {
  return readWorkspaceFromTexts({ ...files, [EXAMPLE_SHEET]: sheet });
}

/** Everything that is found in a workspace. */
export function findingsIn(workspace: Workspace): readonly Finding[] {
  return everyFinding(workspace, examine(workspace));
}

export function findingsOf(sheet: string, files: Readonly<Record<string, string>> = {}): Told[] {
  return mergeFindings(findingsIn(workspaceOf(sheet, files)));
}

/** Findings of one rule in a small sheet. */
export function ofRule(rule: string, parts: SheetParts, files?: Readonly<Record<string, string>>): Told[] {
  return findingsOf(sheetWith(parts), files).filter((finding) => finding.rule === rule);
}

/** The characters a finding points at; undefined without a place. */
export function blamed({ at }: Pick<Told, 'at'>): string | undefined {
  return isWholeFile(at) ? undefined : at.file.text.slice(at.start, at.end);
}
