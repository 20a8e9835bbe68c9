// The PDF for the reader's own paper leads, and each says how large it is where the site is on the web.
(() => {
  /** Where paper is Letter, by the territories of Unicode CLDR's paperSize (supplemental data, from memory). */
  const LETTER = 'BZ CA CL CO CR GT MX NI PA PH PR SV US VE'.split(' ');
  const list = document.querySelector('.downloads');
  if (!list) return;
  const region = regionOf(navigator.language);
  if (region) {
    const paper = LETTER.includes(region) ? 'letter' : 'a4';
    const own = list.querySelector(`[data-paper="site-paper-${paper}"]`);
    if (own) {
      for (const link of list.querySelectorAll('.main')) link.classList.remove('main');
      own.classList.add('main');
      own.closest('ul').prepend(own.closest('li'));
    }
  }

  // A preview makes a PDF when it is asked for, so that asking for its size would have it made.
  if (!location.protocol.startsWith('http') || document.querySelector('script[data-version]')) return;
  const seen = new IntersectionObserver(async (entries) => {
    if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
    seen.disconnect();
    const links = [...list.querySelectorAll('a[href$=".pdf"]')];
    const sizes = [];
    // Asked one after another, so that what the reader asks for goes first; told at once, so that buttons move once.
    for (const { href } of links) sizes.push(await sizeOf(href));
    for (const [index, link] of links.entries()) if (sizes[index]) link.append(` (${sizes[index]})`);
  });
  seen.observe(list);

  /** Some browsers take their language from a system that writes it in its own way. */
  function regionOf(language) {
    try {
      return new Intl.Locale(language).region;
    } catch {
      return undefined;
    }
  }

  async function sizeOf(href) {
    const answer = await fetch(href, { method: 'HEAD' }).catch(() => undefined);
    const bytes = Number(answer?.ok && answer.headers.get('content-length'));
    if (!bytes) return undefined;
    const unit = bytes < 1e6 ? 'kilobyte' : 'megabyte';
    const size = bytes / (bytes < 1e6 ? 1e3 : 1e6);
    const written = new Intl.NumberFormat(document.documentElement.lang, {
      style: 'unit',
      unit,
      maximumFractionDigits: size < 10 ? 1 : 0,
    });
    return written.format(size);
  }
})();
