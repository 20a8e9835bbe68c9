import { type Finding, findMistake } from '../project/finding.ts';
import type { Piece, Project } from '../project/model.ts';
import { caliperOf, stockOf } from './caliper.ts';
import { decorate } from './decorate.ts';
import { explicitNet, flatNet, type NetReading } from './explicit.ts';
import type { Form } from './form.ts';
import { forms } from './forms/index.ts';
import { layPieces } from './layers.ts';
import { cutOpenings } from './openings/cut.ts';
import type { Shapes } from './shapes.ts';
import type { Sheet } from './sheets.ts';
import { outlinedNet } from './tracing/net.ts';

/** All geometry of a project. Never throws for what a person wrote: what cannot be is in `findings`. */
export function buildShapes(project: Project, known: readonly Form[] = forms): Shapes {
  const nets = new Map<string, readonly Sheet[]>();
  const findings: Finding[] = [];
  for (const piece of project.pieces.values()) {
    const made = known === forms ? buildSheets(piece, project) : makeSheets(piece, project, known);
    if (made.sheets.length > 0) nets.set(piece.id.value, made.sheets);
    findings.push(...made.findings);
  }
  const stacked = layPieces([...project.pieces.values()], nets);
  return { nets, layers: stacked.layers, findings: [...findings, ...stacked.findings] };
}

/** The sheets of one piece, none where it cannot be made; and what stood in the way. */
type BuiltSheets = { readonly sheets: readonly Sheet[]; readonly findings: readonly Finding[] };

const built: WeakMap<Project, WeakMap<Piece, BuiltSheets>> = new WeakMap<
  Project,
  WeakMap<Piece, BuiltSheets>
>();

/** Builds the sheets of one piece of a project, once: its other edition is made with the same in view. */
export function buildSheets(piece: Piece, project: Project): BuiltSheets {
  const ofProject = built.get(project) ?? new WeakMap<Piece, BuiltSheets>();
  const sheets = ofProject.get(piece) ?? makeSheets(piece, project, forms);
  built.set(project, ofProject.set(piece, sheets));
  return sheets;
}

function makeSheets(piece: Piece, project: Project, known: readonly Form[]): BuiltSheets {
  const { net, parts = [], findings } = tryNet(piece, project, known);
  const cut = cutOpenings(piece, net ? [{ net }, ...parts] : [], project);
  const decorated = decorate(piece, cut.sheets, project);
  return { ...decorated, findings: [...findings, ...cut.findings, ...decorated.findings] };
}

/** The net of a piece. Where we break on one, the others go on. */
function tryNet(piece: Piece, project: Project, known: readonly Form[]): NetReading {
  try {
    return netOf(piece, project, known);
  } catch (error) {
    const what = piece.body.kind === 'form' ? `the form ${piece.body.form.value}` : 'the net';
    return { findings: [findMistake(`${what} of ${piece.id.value}`, error, piece.id.at)] };
  }
}

function netOf(piece: Piece, project: Project, known: readonly Form[]): NetReading {
  const { body } = piece;
  if (body.kind === 'flat' && body.outline) return outlinedNet(piece, body.cut, body.outline, project);
  if (body.kind === 'flat') return { net: flatNet(piece, body.cut), findings: [] };
  if (body.kind === 'net') return explicitNet(piece, body, project.unit);
  return formNet(piece, body, project, known);
}

type FormBody = Extract<Piece['body'], { kind: 'form' }>;

function formNet(piece: Piece, body: FormBody, project: Project, known: readonly Form[]): NetReading {
  const form = known.find(({ name }) => name === body.form.value);
  if (!form) throw new Error(`the reader let a form pass that isn't there: ${body.form.value}`);
  const { thickness } = caliperOf(stockOf(piece, project));
  const { settings, ruler } = body;
  const result = form.build({ piece, settings, ruler, metric: project.metric, caliper: thickness });
  return result.ok ? { net: result.net, parts: result.parts, findings: [] } : { findings: result.findings };
}
