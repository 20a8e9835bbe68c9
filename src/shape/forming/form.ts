import type { Length } from '../../measure/length.ts';
import type { Form, FormPart } from '../form.ts';
import type { Net } from '../net.ts';
import { Settings } from './settings.ts';

/** A form in two halves: what its settings come to, and the sheets that makes. */
export type FormSpec<Measures> = Omit<Form, 'build'> & {
  /** Works every measurement out and refuses what cannot be. */
  readonly measure: (settings: Settings) => Measures | undefined;
  /** Only called with measurements nothing was refused of; `corners` is the radius of the piece's rounded ones. */
  readonly shape: (
    measures: Measures,
    corners: Length | undefined,
  ) => { readonly net: Net; readonly parts?: readonly FormPart[] };
};

/** The form that reads its settings, and makes its sheets only when nothing stands in the way. */
export function form<Measures>({ measure, shape, ...spec }: FormSpec<Measures>): Form {
  return {
    ...spec,
    build: (request) => {
      const settings = new Settings(spec, request);
      const measures = measure(settings);
      if (settings.findings.length > 0 || !measures) return { ok: false, findings: settings.findings };
      return { ok: true, parts: [], ...shape(measures, settings.corners?.value) };
    },
  };
}
