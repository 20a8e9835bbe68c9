import type { RoundedCorners } from '../../project/corners.ts';
import type { FormParameter } from '../../project/grammar/form-grammar.ts';
import type { Form } from '../form.ts';
import type { Net } from '../net.ts';
import type { Layout } from './layout.ts';
import { Settings } from './settings.ts';
import { shareNet } from './share-net.ts';

/** What a form may be told, by its key. */
export type Parameters = Readonly<Record<string, Omit<FormParameter, 'key'>>>;

/** How it is said how large something is. */
export type Sizing<Size> = {
  readonly parameters: Parameters;
  /** Whether exactly one of these is given; else all of them are. */
  readonly alternatives?: true;
  /** Undefined when the settings give none, with a finding in them. */
  readonly read: (settings: Settings) => Size | undefined;
};

/** A form: how large it is, what its other settings come to, and the sheets that makes if nothing was refused. */
type FormSpec<Size, Measures extends object> = Omit<Form, 'build' | 'parameters' | 'oneOf'> & {
  readonly size: Sizing<Size>;
  readonly parameters?: Parameters;
  /** Works every measurement out and refuses what cannot be. */
  readonly measure: (settings: Settings, size: Size) => Measures;
  /** Its sheet as a picture. Corners are those of the piece, unless the picture has others. */
  readonly layout?: (measures: Measures) => Layout;
  /** Its sheet, where that is no grid; `corners` are the piece's rounded ones. */
  readonly net?: (measures: Measures, corners: RoundedCorners | undefined) => Net;
  /** Further sheets by their names. */
  readonly parts?: (
    measures: Measures,
    corners: RoundedCorners | undefined,
  ) => Readonly<Record<string, Layout | Net>>;
};

/** The form that reads its settings, and makes its sheets only when nothing prevents it. */
export function form<Size extends object, Measures extends object>(spec: FormSpec<Size, Measures>): Form {
  const { size: sizing, parameters: further, measure, layout, net, parts, ...rest } = spec;
  const parameters = Object.entries({ ...sizing.parameters, ...further }).map(([key, parameter]) => ({
    key,
    ...parameter,
  }));
  const oneOf = sizing.alternatives && { oneOf: Object.keys(sizing.parameters) };
  const grammar = { ...rest, parameters, ...oneOf };
  return {
    ...grammar,
    build: (request) => {
      const { id, body, corners: rounded } = request.piece;
      const at = body.kind === 'form' ? body.form.at : id.at;
      const settings = new Settings(parameters, { ...request, name: id.value, at, corners: rounded });
      const { findings } = settings;
      const size = sizing.read(settings);
      const measures = size && measure(settings, size);
      if (!measures || findings.length > 0) return { ok: false, findings };
      const { corners, caliper } = settings;
      const laid = (picture: Layout): Net => shareNet({ corners, ...picture }, caliper);
      const own = layout ? laid(layout(measures)) : net?.(measures, corners);
      if (!own) throw new Error(`the form ${rest.name} has no sheet`);
      const others = Object.entries(parts?.(measures, corners) ?? {}).map(([name, part]) => ({
        name,
        net: 'columns' in part ? laid(part) : part,
      }));
      return { ok: true, net: own, parts: others };
    },
  };
}

/** A length that need not be given; `says` what is taken then. */
export function optionalLength(says: string): Parameters[string] {
  return optional('length', says);
}

/** A setting that need not be given. */
export function optional(kind: FormParameter['kind'], says: string): Parameters[string] {
  return { kind, required: false, says };
}

/** One of some words; the first by default. */
export function optionalWord(choices: readonly string[], says: string): Parameters[string] {
  return { ...optional('choice', says), choices };
}
