import { DRAWING_SCHEMA, STEP_SCHEMA } from '../prose/steps.ts';
import { openingSchema } from '../reading/read-openings.ts';
import { pieceSchema } from '../reading/read-piece.ts';
import { SHEET_SCHEMA } from '../reading/read-project.ts';
import { SHARED_SCHEMA } from '../reading/read-shared.ts';
import { SITE_SCHEMA } from '../reading/read-site.ts';
import type { Schema } from './grammar.ts';
import type { Catalog } from './reader.ts';

/**
 * The files of `schema/`, for editors: of the head of a sheet, of `site.yaml` and of the files of `shared/`; and for the
 * docs the attributes of `:step` and `::drawing`, which no editor knows.
 */
export function jsonSchemas(
  catalog: Catalog,
): Readonly<Record<'sheet' | 'site' | 'shared' | 'step' | 'drawing', Schema>> {
  const $schema = 'https://json-schema.org/draft/2020-12/schema';
  const $defs = { piece: pieceSchema(catalog), opening: openingSchema(catalog.outlines) };
  const type = ['object', 'null'];
  return {
    sheet: { $schema, title: 'The head of sheet.md', ...SHEET_SCHEMA, $defs },
    site: { $schema, title: 'site.yaml', ...SITE_SCHEMA, type },
    shared: { $schema, title: 'A file of shared/', ...SHARED_SCHEMA, type, $defs },
    step: STEP_SCHEMA,
    drawing: DRAWING_SCHEMA,
  };
}
