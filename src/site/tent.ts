import { styleElements } from '../handout/css.ts';
import { qrSvg } from '../handout/qr.ts';
import { headOf, type PageInput } from '../handout/render.ts';
import { readable } from '../handout/supplies.ts';
import type { Paper } from '../project/model.ts';
import { typographic } from '../words/typographic.ts';
import { voiceOf } from '../words/voice.ts';
import type { ListedProject } from './listed.ts';
import { absolute } from './place.ts';
import { hoursOf, whenText } from './when.ts';

/** What a table tent is made with. */
type TentSetting = PageInput & { readonly paper: Paper };

/** A sheet of paper, in millimetres: Letter is 8½ × 11 in. */
const SHEETS: Readonly<Record<Paper, { readonly width: number; readonly height: number }>> = {
  letter: { width: 215.9, height: 279.4 },
  a4: { width: 210, height: 297 },
};

/** The two feet at the ends of the sheet lie over one another and hold the tent open. */
const FOOT = 32;

/**
 * A sheet that folds into a tent for the table: two faces back to back, each with the QR code, and two feet that are
 * stuck together. Undefined where the site has no address for the code to lead to.
 */
export function tentHtml(project: ListedProject, setting: TentSetting): string | undefined {
  const { site, labels, renderer, styles, paper } = setting;
  const address = absolute(site, `${project.slug}/`);
  if (address === undefined) return undefined;
  const voice = voiceOf(labels);
  const { width, height } = SHEETS[paper];
  const face = height / 2 - FOOT;
  const css = `@page { size: ${width}mm ${height}mm; margin: 0; }
:root { --accent: ${project.accent}; --face: ${face}mm; --foot: ${FOOT}mm; }`;
  const title = typographic(project.title, voice.language);
  const head = { title: voice.say('share-tent-of', { title }), description: project.summary ?? title };
  const model = {
    ...headOf(voice, styleElements(styles, css), head),
    siteTitle: site.title,
    title,
    when: project.session && whenText(project.session, hoursOf(site), voice),
    address: readable(address),
    qr: qrSvg(address, voice.say('share-qr', { address })),
    faces: [{ side: 'back' }, { side: 'front' }],
  };
  return renderer.render('tent', model, voice.say);
}
