import { type Finding, findMistake, type RuleId } from '../project/finding.ts';
import { rules } from './rules/index.ts';
import { isFailure, mergeTold, type Told } from './told.ts';
import { quote } from './words.ts';

/** A finding in the words of its rule. */
export function tellFinding<K extends RuleId>(finding: Finding<K>): Told {
  const { rule, at, facts, edition, variant, shared } = finding;
  const { severity, say } = rules[rule];
  const whence = shared ? [{ message: 'it is written here', at: shared }] : [];
  try {
    const words = say(facts, at, edition);
    const inEdition = edition ? `in the ${edition} edition ${words.message}` : words.message;
    const message = variant === undefined ? inEdition : `in the variant ${quote(variant)}, ${inEdition}`;
    // A project that is right as written is never refused because of its other edition.
    const told = { severity, ...words, message, notes: [...(words.notes ?? []), ...whence], rule, at };
    return edition ? { ...told, severity: 'note' } : told;
  } catch (error) {
    return tellFinding<'internal'>(findMistake(`the rule ${rule}`, error, at));
  }
}

/** Whether findings stop what they are about, once they are told. */
export function isStopped(findings: readonly Finding[], strict: boolean): boolean {
  return findings.some((finding) => isFailure([tellFinding(finding)], strict));
}

/** Findings from everywhere as one list, told, each once. */
export function mergeFindings(findings: readonly Finding[]): Told[] {
  return mergeTold(findings.map((finding) => tellFinding(finding)));
}

/**
 * What was found in several variants of a project as one list. What all have is told once and of none of them; any
 * other finding names its variant, but for what is right where one variant has it right.
 */
export function joinVariants(
  variants: readonly { readonly name: string; readonly findings: readonly Finding[] }[],
): readonly Finding[] {
  const keyed = variants.map(({ name, findings }) => ({
    name,
    findings: new Map(findings.map((finding) => [keyInVariants(finding), finding])),
  }));
  return keyed.flatMap(({ name, findings }, index) =>
    [...findings].flatMap(([key, finding]): Finding[] => {
      if (keyed.every((other) => other.findings.has(key))) return index === 0 ? [finding] : [];
      return rules[finding.rule].oneVariantWillDo ? [] : [{ ...finding, variant: name }];
    }),
  );
}

/** The same for what is the same in several variants. */
function keyInVariants(finding: Finding): string {
  const { rule, at } = finding;
  const place = [rule, at.file.path, at.start, at.end];
  const words = rules[rule].oneVariantWillDo ? [] : [tellFinding(finding).message];
  return [...place, ...words].join('\n');
}
