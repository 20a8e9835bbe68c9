import type { Length } from '../../measure/length.ts';
import type { FormParameter } from '../../project/model.ts';
import { refuseNarrow } from './box.ts';
import type { Settings } from './settings.ts';

export const CARD_SIZE: FormParameter = {
  key: 'size',
  kind: 'size',
  required: true,
  says: 'width x height of the folded card',
};

/** The size of a folded card, each panel of it wide enough to fold. */
export function readCard(
  settings: Settings,
): { readonly width: Length; readonly height: Length } | undefined {
  const [width, height] = settings.lengths('size');
  if (!width || !height) return undefined;
  refuseNarrow(settings, width, 'the width');
  refuseNarrow(settings, height, 'the height');
  return { width: width.value, height: height.value };
}
