/**
 * Exports of src that only tests ask for, or nobody: each is to be kept to its file, or asked for by another. The list
 * may only become shorter.
 */
export const STILL_UNUSED: readonly string[] = [
  'drawing/turn-model.ts:TurnModel',
  'handout/mail/envelopes.ts:ENVELOPES',
  'handout/mail/mailed.ts:closedFlat',
  'measure/length.ts:Millimetres',
  'measure/notation.ts:Part',
  'measure/print.ts:FractionStyle',
  'measure/print.ts:printSizes',
  'project/json-schema.ts:directiveSchemas',
  'project/json-schema.ts:jsonSchemas',
  'project/pictures.ts:pathWithin',
  'project/safe-content.ts:isSafeLink',
  'project/schedule.ts:Ordinal',
  'proof/proof.ts:proofSettings',
  'shape/closure/packing.ts:Cavity',
  'shape/explicit.ts:readGrid',
  'shape/form.ts:FormResult',
  'shape/forming/arc.ts:arcRadius',
  'shape/forming/box.ts:BoxMeasures',
  'shape/forming/form.ts:FormSpec',
  'shape/forming/layout.ts:Layout',
  'shape/forming/pillow.ts:PillowMeasures',
  'shape/forming/tray.ts:TrayMeasures',
  'shape/forming/tray.ts:TrayNames',
  'shape/paint/paper-sheet.ts:sharesAfter',
  'shape/paint/picture.ts:Look',
  'shape/paint/picture.ts:placeInPicture',
  'site/index-page.ts:choicesOf',
  'words/languages.ts:keysOf',
];
