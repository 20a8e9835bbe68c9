import { Fields } from './fields.ts';
import type { Finding } from './finding.ts';
import { KNOWN_KEYS } from './known-keys.ts';
import type { BaseReference, Piece, PieceBody, Placement } from './model.ts';
import { present } from './optional.ts';
import { FORM_KEYS, readForm, readFormName } from './read-form.ts';
import { readNet } from './read-net.ts';
import { type Reader, type ReadValue, refuse } from './reader.ts';
import { withShared } from './shared.ts';
import type { At } from './source.ts';
import { asCount, asLength, asMatch, asSize, asText, asTurn, asYes } from './values.ts';
import type { YamlMap, YamlNode } from './yaml-tree.ts';

const FLAT_KEYS: readonly string[] = [...KNOWN_KEYS.piece, ...KNOWN_KEYS.flat];

/** A piece as written. Its body is missing where its size or net has a fault. */
export type WrittenPiece = Omit<Piece, 'body'> & { readonly body: PieceBody | undefined };

/** The piece, unless its size or net has a fault: half of it would only mislead every rule that follows. */
export function wholePiece({ body, ...piece }: WrittenPiece): Piece | undefined {
  return body && { ...piece, body };
}

/** One entry of `pieces:`. */
export function readPiece(id: At<string>, written: YamlNode, reader: Reader): WrittenPiece | undefined {
  const node = withShared(written, 'pieces', reader);
  if (!node) return undefined;
  if (node.kind !== 'map') return refuse(node, id.value, 'a piece, such as { cut: 3 x 4 }', reader);
  const { fields, body } = readBody(node, id, reader);
  return {
    id,
    body,
    ...present('stock', fields.read('stock', asText)),
    ...present('on', fields.read('on', asBase)),
    placement: readPlacement(fields, reader),
    overhang: fields.read('overhang', asYes)?.value ?? false,
    ...present('corners', fields.read('corners', asLength)),
    count: fields.read('count', asCount(1, 1000)) ?? { value: 1, at: id.at },
    at: node.at,
  };
}

/** What a piece is: a form if it names one, else a flat piece or a net; and all its keys, to read on. */
function readBody(
  node: YamlMap,
  id: At<string>,
  reader: Reader,
): { readonly fields: Fields; readonly body: PieceBody | undefined } {
  const where = `pieces.${id.value}`;
  if (!node.entries.some(({ key }) => key.text === 'form')) {
    const fields = new Fields(node, where, reader, id.at, FLAT_KEYS);
    return { fields, body: readCut(fields, reader) };
  }
  const form = readFormName(new Fields(node, where, reader, id.at), reader);
  const known = form && [...form.parameters.map(({ key }) => key), ...FORM_KEYS];
  const fields = new Fields(node, where, reader, id.at, known);
  const written = form && readForm(form, fields, reader);
  return { fields, body: written && { kind: 'form', ...written } };
}

function readCut(fields: Fields, reader: Reader): PieceBody | undefined {
  const cut = fields.require('cut', asSize);
  const findings: Finding[] = [];
  const noting: Reader = {
    ...reader,
    report: (finding) => {
      findings.push(finding);
      reader.report(finding);
    },
  };
  const net = readNet(fields.heardBy(noting), noting);
  if (!cut || findings.length > 0) return undefined;
  return net.score.length === 0 && net.panels.length === 0
    ? { kind: 'flat', cut }
    : { kind: 'net', cut, ...net };
}

/** `at: { left: 1/4 }`, `turn:` inside it or beside it. */
function readPlacement(fields: Fields, reader: Reader): Placement {
  const node = fields.node('at');
  const beside = present('turn', fields.read('turn', asTurn));
  if (!node) return beside;
  if (node.kind !== 'map') {
    refuse(node, 'at', 'distances from edges, such as { left: 1/4 }', reader);
    return beside;
  }
  const inside = new Fields(node, `${fields.where}.at`, reader, node.at, KNOWN_KEYS.placement);
  return {
    ...present('left', inside.read('left', asLength)),
    ...present('right', inside.read('right', asLength)),
    ...present('top', inside.read('top', asLength)),
    ...present('bottom', inside.read('bottom', asLength)),
    ...beside,
    ...present('turn', inside.read('turn', asTurn)),
  };
}

/** `front`, or `box.front` for a panel. */
const asBase: ReadValue<At<BaseReference>> = asMatch(
  'a piece or a panel, such as front or box.front',
  /^([^.\s](?:[^.]*[^.\s])?)(?:\.([^.]+))?$/u,
  ([, piece = '', panel]) => (panel === undefined ? { piece } : { piece, panel }),
);
