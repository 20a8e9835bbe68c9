import type { RuleId } from '../../src/project/finding.ts';
import type { Rules } from '../../src/proof/rule.ts';
import { rules } from '../../src/proof/rules/index.ts';
import { boxWith, tuckBoxWith } from './box-with.ts';
import { sheetWith } from './sheet-with.ts';
import { EXAMPLE_SHEET } from './workspace.ts';

/** A small workspace that shows a rule at work, and the text its finding points at. */
export type WrittenExample = {
  readonly sheet: string;
  readonly files: Readonly<Record<string, string>>;
  readonly blames?: string;
};

export type Shown = { readonly id: RuleId; readonly fails: WrittenExample; readonly passes: WrittenExample };

type AnyRule = Rules[RuleId];

export const RULES: readonly (readonly [id: RuleId, AnyRule])[] = Object.entries(rules) as [
  RuleId,
  AnyRule,
][];

/** The rules with their examples written out; what is wrong with the program no sheet can show. */
export const SHOWN: readonly Shown[] = RULES.flatMap(([id, { fails, passes }]) => {
  if (!fails || !passes) return [];
  const failing = writtenOut(fails);
  if (!('with' in passes)) return [{ id, fails: failing, passes: writtenOut(passes) }];
  const sheet = failing.sheet.replaceAll(passes.insteadOf, () => passes.with);
  return [{ id, fails: failing, passes: { sheet, files: failing.files } }];
});

/** The files of an example by path. Where one lies beneath the sheet's own path, that is a folder and no file. */
export function filesOf({ sheet, files }: WrittenExample): Record<string, string> {
  const sheetIsFolder = Object.keys(files).some((path) => path.startsWith(`${EXAMPLE_SHEET}/`));
  return sheetIsFolder ? { ...files } : { ...files, [EXAMPLE_SHEET]: sheet };
}

function writtenOut({ blames, ...example }: NonNullable<AnyRule['fails']>): WrittenExample {
  const sheet = textOf(example);
  const { files = {}, folder } = example;
  return {
    sheet,
    files: folder === undefined ? files : { ...files, [`${folder}/sheet.md`]: sheet },
    ...(blames !== undefined && { blames }),
  };
}

function textOf({ sheet, box, tuckBox, ...parts }: NonNullable<AnyRule['fails']>): string {
  if (sheet !== undefined) return sheet;
  if (box) return boxWith({ ...box, ...parts });
  return tuckBox ? tuckBoxWith(tuckBox) : sheetWith(parts);
}
