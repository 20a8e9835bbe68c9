import { rulerUnit } from '../../measure/ruler-unit.ts';
import type { FormAsWritten, FormGrammar, FormSetting } from '../grammar/form-grammar.ts';
import { type Group, made, type ToRead, type Value, whereOf } from '../grammar/grammar.ts';
import { listed, named, needed, optional, together } from '../grammar/keys.ts';
import { type Reader, reportMissing } from '../grammar/reader.ts';
import { asSize, asText } from '../grammar/values.ts';
import type { PieceBody } from '../model.ts';
import type { At } from '../source.ts';
import { entryOf, isRunOn, type YamlNode } from '../yaml/yaml-node.ts';
import { asCell, asFoldOfLine, asScore, asSlit } from './read-lines.ts';
import { asSetting } from './read-setting.ts';

/** The form that a piece names, if there is one of that name. */
export function formNamed(name: YamlNode, { forms }: Reader): FormGrammar | undefined {
  const text = name.kind === 'text' ? name.text.trim().toLowerCase() : undefined;
  return forms.find((form) => form.name === text);
}

/** The name of a form, among those there are. */
export const asFormName: Value<At<string>> = made(asText, (name, { node, reader }) => {
  const form = formNamed(node, reader);
  if (form) return { value: form.name, at: name.at };
  const facts = { what: 'form', name: name.value, among: reader.forms.map((each) => each.name) };
  reader.report({ rule: 'unknown-reference', at: name.at, facts });
  return undefined;
});

/** What a form is told, and what it measures with. */
type FormSettings = Pick<FormAsWritten, 'settings' | 'ruler'>;

/** A form's settings, each read once and for all. */
export function settingsOf({ parameters }: FormGrammar): Group<FormSettings> {
  const keys = parameters.map((parameter) => {
    const { key, required, says } = parameter;
    const setting = optional(asSetting(parameter), says);
    return [key, required ? needed(setting) : setting] as const;
  });
  const make = (read: Readonly<Record<string, FormSetting | undefined>>, reader: Reader): FormSettings => {
    const settings = new Map(
      Object.entries(read).flatMap(([key, setting]) => (setting ? [[key, setting]] : [])),
    );
    const measured = [...settings.values()].find((setting) => setting.kind === 'lengths');
    return { settings, ruler: rulerUnit(measured?.unit ?? reader.unit) };
  };
  return together(Object.fromEntries(keys), make);
}

/** Whether exactly one is there of those settings that stand for each other; if not, it is reported. */
export function choosesOne({ oneOf }: FormGrammar, { node, spot, reader }: ToRead): boolean {
  if (!oneOf) return true;
  const [first, second] = oneOf.flatMap((name) => entryOf(node, name)?.key ?? []);
  const [key = '', ...instead] = oneOf;
  const isThere = first !== undefined || oneOf.some((name) => isRunOn(node, name));
  if (!isThere) reportMissing({ key, instead, where: whereOf(spot), isWritten: false }, spot.at, reader);
  else if (first && second) {
    const clash = { misfit: 'one too many', actual: second.text, other: first.text } as const;
    reader.report({ rule: 'unexpected-value', at: second.at, facts: clash });
  }
  return first !== undefined && second === undefined;
}

const PANELS = 'panels by name, such as { front: B3 }';
const FOLDS = 'folds by line, such as { 1|2: valley 90 }';
const GLUE = 'what sticks to what, such as { tab: A3 }';

/** More than any piece has: each line is held against every other. */
const MOST_LINES = 100;

/** A flat piece, or one with score lines and what becomes of its cells. */
export const flatOrNet: Group<PieceBody> = together(
  {
    cut: needed(optional(asSize, 'The size it is cut to, width first, as it lies in front of you.')),
    form: optional(asText, 'A ready-made form instead, with its own few measurements.'),
    score: listed(
      asScore,
      'Edges and the positions of the score lines from them; lines at an angle, from corner to corner.',
    ),
    panels: named(asCell, PANELS, 'Names for the cells you talk about, or stick something on.'),
    trim: listed(asText, 'Cells that are cut away.'),
    slit: listed(asSlit, 'Cuts along a score line: `A|B 1-2` between columns A and B, through rows 1 to 2.'),
    taper: listed(asText, 'Cells whose free corners are cut at an angle, so that they tuck in.'),
    folds: named(
      asFoldOfLine,
      FOLDS,
      'How a line is folded: `1|2: valley 90` is that between rows 1 and 2, `B1|B2: flat` what of it lies between two cells. With `none` there is no line, and the cells beside it are one panel.',
    ),
    glue: named(asText, GLUE, 'What sticks to what once it is folded: the cell with the glue, its partner.'),
    opens: listed(asText, 'Cells that move in the finished piece: a lid, a flap that stays unglued.'),
  },
  ({ cut, score, panels, trim, slit, taper, folds, glue, opens }, reader): PieceBody | undefined => {
    const lines = score.flatMap((each) => ('at' in each ? each.at : []));
    const past = lines[MOST_LINES];
    if (past) {
      const facts = { what: 'score lines', count: lines.length, most: MOST_LINES };
      reader.report({ rule: 'too-many', at: past.at, facts });
      return undefined;
    }
    if (!cut || (score.length === 0 && panels.values.length === 0)) return cut && { kind: 'flat', cut };
    return {
      kind: 'net',
      cut,
      score: score.flatMap((each) => ('at' in each ? [each] : [])),
      slants: score.flatMap((each) => ('at' in each ? [] : [each])),
      panels: panels.values.map(({ name, value }) => ({ name, cell: value })),
      trim,
      slit,
      taper,
      folds: folds.values.map(({ value }) => value),
      glue: glue.values.map(({ name, value }) => ({ from: name, to: value })),
      opens,
    };
  },
);
