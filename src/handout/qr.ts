import QRCode from 'qrcode';
import type { Speak } from '../words/labels.ts';
import { html, type SafeHtml } from '../words/safe-html.ts';

/** The blank border a reader needs round a QR code, in modules. Source: its inventor, qrcode.com (ISO/IEC 18004 has the same). */
const QUIET = 4;

/**
 * The QR code of an address as an SVG that takes its size from where it stands, quiet zone and white ground included; error level M,
 * which a reader still reads with about 15 % of it hidden.
 */
export function qrSvg(address: string, say: Speak): SafeHtml {
  const { modules } = QRCode.create(address, { errorCorrectionLevel: 'M' });
  const side = modules.size + 2 * QUIET;
  const runs: string[] = [];
  for (let row = 0; row < modules.size; row += 1) {
    for (let column = 0; column < modules.size; column += 1) {
      const start = column;
      while (column < modules.size && modules.get(row, column)) column += 1;
      if (column > start)
        runs.push(`M${start + QUIET} ${row + QUIET}h${column - start}v1h-${column - start}z`);
    }
  }
  const path = runs.join('');
  const label = say('share-qr', { address });
  return html`<svg class="qr" xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${side} ${side}" role="img" aria-label="${label}" shape-rendering="crispEdges"><path fill="#fff" d="M0 0h${side}v${side}H0z"/><path fill="#000" d="${path}"/></svg>`;
}
