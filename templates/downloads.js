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

  if (!location.protocol.startsWith('http')) return;
  const seen = new IntersectionObserver((entries) => {
    if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
    seen.disconnect();
    for (const link of list.querySelectorAll('a[href$=".pdf"]')) tellSize(link);
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

  async function tellSize(link) {
    const answer = await fetch(link.href, { method: 'HEAD' }).catch(() => undefined);
    const bytes = Number(answer?.ok && answer.headers.get('content-length'));
    if (!bytes) return;
    const unit = bytes < 1e6 ? 'kilobyte' : 'megabyte';
    const size = bytes / (bytes < 1e6 ? 1e3 : 1e6);
    const written = new Intl.NumberFormat(document.documentElement.lang, {
      style: 'unit',
      unit,
      maximumFractionDigits: size < 10 ? 1 : 0,
    });
    link.append(` (${written.format(size)})`);
  }
})();
