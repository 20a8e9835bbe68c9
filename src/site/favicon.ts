/** An open carton with its four flaps up, in kraft colors that show on light and on dark ground. Ours, and only ours. */
export const FAVICON: string = [
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 64 64" width="64" height="64">',
  '<g stroke="#33414e" stroke-width="3" stroke-linejoin="round">',
  '<path fill="#8a6f45" d="M8 26 32 14 56 26 32 38Z"/>',
  '<path fill="#e3cfa4" d="M8 26 32 14 25 4 2 16Z"/>',
  '<path fill="#f0e2c2" d="M56 26 32 14 39 4 62 16Z"/>',
  '<path fill="#f0e2c2" d="M8 26 32 38V61L8 49Z"/>',
  '<path fill="#d3ba86" d="M56 26 32 38V61L56 49Z"/>',
  '</g>',
  '<path fill="none" stroke="#33414e" stroke-width="2" stroke-dasharray="5 2 1 2" d="M20 32V55"/>',
  '</svg>\n',
].join('\n');
