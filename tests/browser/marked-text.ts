import type { Page } from 'playwright-core';

/** Opens and closes a phrase that came out of the catalogue. */
const OPENING = '⟦';
const CLOSING = '⟧';

/** A catalogue that says every phrase in English between marks; spaces at the ends stay outside. */
export function markedCatalogue(phrases: readonly string[]): Record<string, string> {
  return Object.fromEntries(
    phrases.map((english) => [english, english.replace(/^(\s*)([^]*?)(\s*)$/, `$1${OPENING}$2${CLOSING}$3`)]),
  );
}

/** Units, formats and names of programs, the same in every language. */
const SAME_EVERYWHERE =
  /°[FC]|\b(?:km|mi|ft|min|mm|cm|kB|MB|GB|CSV|SVG|PNG|PDF|SQL|JSON|QR|GHCN|DuckDB|TMIN|TMAX|NOAA|English|Español)\b/g;

/**
 * What of a part of the page can be read or heard and came from no catalogue: texts, and accessible names and hints. `names` are
 * those of data: stations, places, sources. Figures, units and single letters pass, and so does what is marked as not to be
 * translated. A phrase that was cut into pieces is told too: such pieces make no sense in another language.
 */
export async function unmarkedTexts(page: Page, part: string, names: readonly string[]): Promise<string[]> {
  const texts = await page.evaluate((selector) => {
    const KEPT = '[translate="no"], code, pre, script, style, textarea, :not(html)[lang]';
    const READ = [
      'aria-label',
      'aria-description',
      'aria-valuetext',
      'aria-roledescription',
      'title',
      'placeholder',
      'alt',
    ];
    const found = new Set<string>();
    for (const root of document.querySelectorAll(selector)) {
      const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node; node = walker.nextNode())
        if (!node.parentElement?.closest(KEPT)) found.add(node.nodeValue ?? '');
      for (const element of [root, ...root.querySelectorAll('*')])
        for (const name of READ)
          if (element.hasAttribute(name) && !element.closest(KEPT))
            found.add(element.getAttribute(name) ?? '');
    }
    return [...found];
  }, part);
  const known = new RegExp(
    [...names]
      .filter((name) => name.length > 1)
      .sort((a, b) => b.length - a.length)
      .map((name) => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'))
      .join('|'),
    'gi',
  );
  return texts.filter((text) => hasWords(text, known)).map((text) => text.replace(/\s+/g, ' ').trim());
}

function hasWords(text: string, known: RegExp): boolean {
  let left = text;
  for (let before = ''; before !== left;) {
    before = left;
    left = left.replace(/⟦[^⟦⟧]*⟧/g, ' ');
  }
  if (left.includes(OPENING) || left.includes(CLOSING)) return true;
  return /\p{L}{2,}/u.test(left.replace(known, ' ').replace(SAME_EVERYWHERE, ' '));
}
