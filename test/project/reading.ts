import type { Length } from '../../src/measure/length.ts';
import type { Finding } from '../../src/project/finding.ts';
import type { Piece, Project } from '../../src/project/model.ts';
import { type Ref, writeRef } from '../../src/project/ref.ts';
import type { At, Place } from '../../src/project/source.ts';
import { readWorkspaceFromTexts } from '../../src/shape/workspace.ts';

/** The one project of a workspace whose sheet is this text, with further files beside it. */
export function readSheet(sheet: string, files: Readonly<Record<string, string>> = {}): Project {
  const [project] = readWorkspaceFromTexts({ 'box/sheet.md': sheet, ...files }).projects;
  if (!project) throw new Error('no project was read');
  return project;
}

/** A sheet with these lines under `measurements:`. */
export function sheetOf(measurements: string, body = ''): string {
  const lines = measurements.split('\n').map((line) => `  ${line}`);
  return ['---', 'title: Box', 'measurements:', ...lines, '---', body].join('\n');
}

/** The characters a place covers. */
export function blamed({ file, start, end }: Place): string {
  return file.text.slice(start, end);
}

/** Each fault as `kind: the characters it points at`. */
export function faultsOf({ findings }: { readonly findings: readonly Finding[] }): string[] {
  return findings.map(({ rule, at }) => `${rule}: ${blamed(at)}`);
}

/** A value beside the characters it was read from: `9/4 in from 2 1/4`. */
export function from(value: At<string | number | boolean | Length | Ref> | undefined): string {
  if (!value) return 'nothing';
  const said =
    typeof value.value === 'object' && 'piece' in value.value ? writeRef(value.value) : value.value;
  return `${said} from ${blamed(value.at)}`;
}

export function pieceOf(project: Project, id: string): Piece {
  const piece = project.pieces.get(id);
  if (!piece) throw new Error(`no piece ${id}; there are ${[...project.pieces.keys()].join(', ')}`);
  return piece;
}

/** Width and height of a flat or scored piece, as `from` shows them. */
export function cutOf(project: Project, id: string): string[] {
  const { body } = pieceOf(project, id);
  return body.kind === 'form' ? [] : [from(body.cut.width), from(body.cut.height)];
}
