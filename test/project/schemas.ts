import { pieceSchema } from '../../src/project/read-pieces.ts';
import { SHEET_SCHEMA } from '../../src/project/read-project.ts';
import { SHARED_SCHEMA } from '../../src/project/read-shared.ts';
import { SITE_SCHEMA } from '../../src/project/read-site.ts';
import type { Schema } from '../../src/project/schema.ts';
import { forms } from '../../src/shape/forms/index.ts';

const $schema = 'https://json-schema.org/draft/2020-12/schema';
const $defs = { piece: pieceSchema(forms) };

/** The files of `schema/`, for editors: of the head of a sheet, of `site.yaml` and of the files of `shared/`. */
export const schemas: Readonly<Record<'sheet' | 'site' | 'shared', Schema>> = {
  sheet: { $schema, title: 'The head of sheet.md', ...SHEET_SCHEMA, $defs },
  site: { $schema, title: 'site.yaml', ...SITE_SCHEMA, type: ['object', 'null'] },
  shared: { $schema, title: 'A file of shared/', ...SHARED_SCHEMA, type: ['object', 'null'], $defs },
};
