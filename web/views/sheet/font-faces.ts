/**
 * The page's own faces as a style sheet that holds their files, for a picture that is drawn apart from the page. A file that
 * does not come is left out: the picture then falls back as the page would.
 */
export async function fontFaces(): Promise<string> {
  const faces = [...document.styleSheets].flatMap((sheet) => {
    const rules = readable(sheet);
    return rules
      .filter((rule) => rule instanceof CSSFontFaceRule)
      .map((rule) => ({ rule, base: sheet.href ?? document.baseURI }));
  });
  const texts = await Promise.all(faces.map(({ rule, base }) => embedded(rule, base).catch(() => '')));
  return texts.join('\n');
}

/** Rules of a style sheet; none of one that the browser keeps to itself. */
function readable(sheet: CSSStyleSheet): readonly CSSRule[] {
  try {
    return [...sheet.cssRules];
  } catch {
    return [];
  }
}

async function embedded(rule: CSSFontFaceRule, base: string): Promise<string> {
  const address = /url\(["']?([^"')]+)["']?\)/.exec(rule.style.getPropertyValue('src'))?.[1];
  if (address === undefined) return '';
  const response = await fetch(new URL(address, base));
  if (!response.ok) return '';
  const data = await asDataUrl(await response.blob());
  return rule.cssText.replace(/src:[^;]*;/, `src: url("${data}") format("woff2");`);
}

function asDataUrl(blob: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error ?? new Error('The file could not be read.'));
    reader.readAsDataURL(blob);
  });
}
