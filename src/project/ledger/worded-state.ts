import { Length } from '../../measure/length.ts';
import { parseLength } from '../../measure/notation.ts';
import type { PublishedFact, PublishedState } from './ledger.ts';

/** A state as ledgers recorded it once: `front: place` to `on box.front, ⅛ in from the left and ⅛ in from the top`. */
type WordedState = Pick<PublishedState, 'steps'> & {
  readonly measurements: Readonly<Record<string, string>>;
};

/** Reads such a state, in the one edition it was recorded in. */
export function stateInWords({ measurements, steps }: WordedState): PublishedState {
  return { pieces: Object.entries(measurements).map(factOf), steps };
}

const SCORES = /^(?<piece>.+): scores from (?<edge>left|right|top|bottom)$/u;
const OTHER = /^(?<piece>.+): (?<what>corners|paper|pieces|place)$/u;
const PLACE =
  /^on (?<base>.+), (?<left>.+) from the left and (?<top>.+) from the top(?:, turned (?<turn>.+)°)?$/u;
const EDGES = ['left', 'right', 'top', 'bottom'] as const;

function factOf([name, text]: [string, string]): PublishedFact {
  const { piece: scored, edge } = SCORES.exec(name)?.groups ?? {};
  const from = EDGES.find((each) => each === edge);
  if (scored !== undefined) return { piece: scored, what: 'scores', from, ...lengthsOf(text.split(', ')) };
  const { piece = name, what } = OTHER.exec(name)?.groups ?? {};
  if (what === 'paper' || what === 'pieces') return { piece, what, word: text };
  if (what === 'corners') return { piece, what, ...lengthsOf([text]) };
  if (what !== 'place') return { piece, what: 'size', ...lengthsOf(text.split(' × ')) };
  const { base, left = '', top = '', turn } = PLACE.exec(text)?.groups ?? {};
  const turned = turn === undefined ? {} : { turn: Number(turn) };
  return { piece, what, word: base, ...turned, ...lengthsOf([left, top]) };
}

/** The unit follows the last. */
function lengthsOf(texts: readonly string[]): Pick<PublishedFact, 'inch' | 'metric'> {
  const isMetric = texts.at(-1)?.endsWith('mm') === true;
  const lengths = texts.map((text) => lengthOf(text, isMetric ? 'mm' : 'in'));
  return isMetric ? { metric: lengths } : { inch: lengths };
}

/** An offset may be negative, or nothing. */
function lengthOf(text: string, unit: 'in' | 'mm'): Length {
  const reading = parseLength(text.replace(/^−/u, ''), unit);
  if (!reading.ok) return Length.zero;
  return text.startsWith('−') ? Length.zero.minus(reading.value) : reading.value;
}
