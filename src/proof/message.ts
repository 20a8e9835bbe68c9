import { VFile } from 'vfile';
import { VFileMessage } from 'vfile-message';
import { isWholeFile, pointAt } from '../project/source.ts';
import type { Severity, Told } from './told.ts';

/** vfile's three grades: true stops a file, false warns, undefined only informs. */
const FATAL: Readonly<Record<Severity, boolean | undefined>> = {
  error: true,
  warning: false,
  note: undefined,
};

/** A finding as the message that editors and reporters of the unified family read: line and column, no offsets. */
export class FindingMessage extends VFileMessage {
  readonly finding: Told;

  constructor(finding: Told) {
    const { at, message, rule, severity, remedy } = finding;
    const place = !isWholeFile(at) && {
      start: { ...pointAt(at.file.text, at.start), offset: at.start },
      end: { ...pointAt(at.file.text, at.end), offset: at.end },
    };
    super(message, { ruleId: rule, source: 'sheetwright', ...(place && { place }) });
    this.finding = finding;
    this.file = at.file.path;
    this.name = place ? `${this.file}:${place.start.line}:${place.start.column}` : this.file;
    this.fatal = FATAL[severity];
    if (remedy !== undefined) this.note = remedy;
  }
}

/** One virtual file for each file something was found in, in the order of the findings, with its messages. */
export function findingFiles(findings: readonly Told[]): VFile[] {
  const files = new Map<string, VFile>();
  for (const finding of findings) {
    const message = new FindingMessage(finding);
    const path = message.file ?? '';
    const file = files.get(path) ?? new VFile({ path, value: finding.at.file.text });
    file.messages.push(message);
    files.set(path, file);
  }
  return [...files.values()];
}
