/**
 * Exports of src that only tests ask for, or nobody: each is to be kept to its file, or asked for by another. The list
 * may only become shorter.
 */
export const STILL_UNUSED: readonly string[] = [
  'drawing/turn-model.ts:TurnModel',
  'handout/mail/envelopes.ts:ENVELOPES',
  'project/grammar/json-schema.ts:jsonSchemas',
  'words/languages.ts:keysOf',
];
