import { KNOWN_KEYS } from '../project/known-keys.ts';
import type { Piece, Project } from '../project/model.ts';
import { caliperOf } from './caliper.ts';
import { explicitNet, flatNet, type NetReading } from './explicit.ts';
import type { Form, FormParameter } from './form.ts';
import { forms } from './forms/index.ts';
import { layPieces } from './layers.ts';
import { nameRemedy } from './nearest.ts';
import type { Net } from './net.ts';
import type { ShapeProblem, Shapes } from './shapes.ts';

/** All geometry of a project. Never throws for what a person wrote: what cannot be is in `problems`. */
export function buildShapes(project: Project): Shapes {
  return buildShapesWith(project, forms);
}

/** As `buildShapes`, with the forms to choose from given. */
export function buildShapesWith(project: Project, known: readonly Form[]): Shapes {
  const nets = new Map<string, Net>();
  const problems: ShapeProblem[] = [];
  for (const [id, piece] of project.pieces) {
    const reading = netOf(piece, project, known);
    problems.push(...reading.problems);
    if (reading.net) nets.set(id, reading.net);
    for (const { name, net } of reading.parts ?? []) nets.set(`${id}.${name}`, net);
  }
  const stacked = layPieces(project, nets);
  return { nets, layers: stacked.layers, problems: [...problems, ...stacked.problems] };
}

function netOf(piece: Piece, project: Project, known: readonly Form[]): NetReading {
  const { body } = piece;
  if (body.kind === 'flat') return { net: flatNet(piece, body.cut), problems: [] };
  if (body.kind === 'net') return explicitNet(piece, body, project.unit);
  return formNet(piece, body, project, known);
}

type FormBody = Extract<Piece['body'], { kind: 'form' }>;

function formNet(piece: Piece, body: FormBody, project: Project, known: readonly Form[]): NetReading {
  const form = known.find(({ name }) => name === body.form.value.trim().toLowerCase());
  if (!form) return { problems: [unknownForm(body, known)] };
  const problems = [
    ...unknownSettings(form, body),
    ...missingSettings(form, body),
    ...wrongChoices(form, body),
  ];
  if (problems.length > 0) return { problems };
  const stock = piece.stock && project.stock.get(piece.stock.value);
  const { thickness } = caliperOf(stock);
  const { unit, metric } = project;
  const result = form.build({ piece, settings: body.settings, unit, metric, caliper: thickness });
  return result.ok ? { net: result.net, parts: result.parts, problems: [] } : { problems: result.problems };
}

function unknownForm({ form }: FormBody, known: readonly Form[]): ShapeProblem {
  const names = known.map(({ name }) => name);
  return {
    rule: 'unknown-reference',
    message: `there is no form "${form.value}"`,
    remedy: nameRemedy(form.value, names),
    at: form.at,
  };
}

function unknownSettings(form: Form, { settings }: FormBody): ShapeProblem[] {
  const keys = form.parameters.map(({ key }) => key);
  return [...settings.values()]
    .filter(({ key }) => !keys.includes(key.value))
    .map(({ key }) => ({
      rule: 'unknown-key',
      message: `${withArticle(form.name)} has no "${key.value}"`,
      remedy: nameRemedy(key.value, [...keys, ...KNOWN_KEYS.piece]),
      at: key.at,
    }));
}

function missingSettings(form: Form, { form: name, settings }: FormBody): ShapeProblem[] {
  const missing = form.parameters.filter(({ key, required }) => required && !settings.has(key));
  return missing.map((parameter) => ({
    rule: 'missing-value',
    message: `${withArticle(form.name)} needs "${parameter.key}": ${parameter.says}`,
    remedy: `add "${parameter.key}: ${sample(parameter)}"`,
    at: name.at,
  }));
}

function wrongChoices(form: Form, { settings }: FormBody): ShapeProblem[] {
  return form.parameters.flatMap(({ key, choices }) => {
    const setting = settings.get(key);
    if (!choices || !setting || choices.includes(setting.text.value.trim())) return [];
    const message = `"${key}" of ${withArticle(form.name)} is ${choices.join(' or ')}, not "${setting.text.value}"`;
    return [
      {
        rule: 'unexpected-value',
        message,
        remedy: nameRemedy(setting.text.value, choices),
        at: setting.text.at,
      },
    ];
  });
}

function sample({ kind, choices }: FormParameter): string {
  if (kind === 'choice') return choices?.[0] ?? '…';
  return { length: '1/2', size: '4 x 6', volume: '3 x 1 x 4', count: '4' }[kind];
}

/** `a tray`, `an envelope`. */
function withArticle(name: string): string {
  return `${/^[aeiou]/iu.test(name) ? 'an' : 'a'} ${name}`;
}
