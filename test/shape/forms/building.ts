import Fraction from 'fraction.js';
import { examine, findingsOf } from '../../../src/examine/examine.ts';
import { Length, type Unit } from '../../../src/measure/length.ts';
import { CORNERS, type Corner, type RoundedCorners } from '../../../src/project/corners.ts';
import { mergeFindings } from '../../../src/proof/tell.ts';
import type { Told } from '../../../src/proof/told.ts';
import type { Form } from '../../../src/shape/form.ts';
import { forms } from '../../../src/shape/forms/index.ts';
import type { FlatPoint, Net } from '../../../src/shape/net.ts';
import { readWorkspaceFromTexts } from '../../../src/shape/workspace.ts';

/** 80 lb cover: a trade chart's 9.5 points, "guide only". */
export const CARDSTOCK: Length = Length.of(95, 10_000, 'in');

export type Written = {
  readonly settings: Readonly<Record<string, string>>;
  readonly unit?: Unit;
  readonly caliper?: Length;
  readonly corners?: Length;
};

export function formNamed(name: string): Form {
  const form = forms.find((each) => each.name === name);
  if (!form) throw new Error(`no form is named ${name}`);
  return form;
}

/** Corners rounded by a radius, all if no others are said. */
export function roundedBy(value: Length, corners: readonly Corner[] = CORNERS): RoundedCorners {
  const file = { path: '', text: '1/8' };
  return [{ radius: { value, at: { file, start: 0, end: 3 } }, corners }];
}

/** Builds a form from its settings as a sheet has them. */
export function build(
  name: string,
  { settings, unit = 'in', caliper = CARDSTOCK, corners }: Written,
): ReturnType<Form['build']> {
  const lines = Object.entries(settings).map(([key, text]) => `      ${key}: ${text}\n`);
  const sheet = `---\ntitle: Box\nmeasurements:\n  unit: ${unit}\n  stock: { cream: { sheet: 12 x 12 } }\n  pieces:\n    box:\n      stock: cream\n      form: ${name}\n${lines.join('')}---\n\n## Make :piece[box]\n`;
  const workspace = readWorkspaceFromTexts({ 'box/sheet.md': sheet });
  const [project] = workspace.projects;
  const written = project?.pieces.get('box');
  if (!project || written?.body.kind !== 'form') {
    return { ok: false, findings: findingsOf(workspace, examine(workspace)) };
  }
  const piece = { ...written, ...(corners && { corners: roundedBy(corners) }) };
  const { settings: read, ruler } = written.body;
  return formNamed(name).build({ piece, settings: read, ruler, caliper });
}

/** The nets of a form that can be built, the piece's own first. @throws Error with the problems of one that cannot. */
export function netsOf(name: string, written: Written): readonly [Net, ...Net[]] {
  const result = build(name, written);
  if (!result.ok)
    throw new Error(
      `${name}: ${problemsOf(name, written)
        .map(({ message }) => message)
        .join('; ')}`,
    );
  return [result.net, ...result.parts.map(({ net }) => net)];
}

export function problemsOf(name: string, written: Written): readonly Told[] {
  const result = build(name, written);
  return result.ok ? [] : mergeFindings(result.findings);
}

/** What the problem points at. */
export function blamed({ at }: Pick<Told, 'at'>): string {
  return at.file.text.slice(at.start, at.end);
}

/** Square millimeters, by the shoelace formula in fraction.js's exact arithmetic. */
export function areaOf(outline: readonly FlatPoint[]): Fraction {
  return outline
    .reduce((sum, { x, y }, index) => {
      const next = outline[(index + 1) % outline.length];
      return next
        ? sum.add(
            exact(x)
              .mul(exact(next.y))
              .sub(exact(next.x).mul(exact(y))),
          )
        : sum;
    }, new Fraction(0))
    .div(2)
    .abs();
}

export function exact(length: Length): Fraction {
  const { numerator, denominator } = length.in('mm');
  return new Fraction(numerator, denominator);
}

/** Every number a person cuts or scores by: the sheet, the score lines, the flaps; none that follows from an angle. */
export function numbersOf(net: Net): readonly Length[] {
  const boxes = net.panels.flatMap(({ box, slanted }) =>
    slanted ? [] : [box.left, box.top, box.right, box.bottom],
  );
  const scores = net.scores.flatMap(({ at }) => at);
  return [net.size.width, net.size.height, ...scores, ...boxes];
}

export function inches(top: number, bottom = 1): Length {
  return Length.of(top, bottom, 'in');
}
