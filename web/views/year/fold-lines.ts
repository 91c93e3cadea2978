/** Octets that a line of a calendar file may have, its end not counted (RFC 5545, 3.1). */
export const LINE_OCTETS = 75;

/**
 * Folds a calendar file's lines anew by octets of UTF-8 instead of letters, so that degrees, accents and pictures keep within
 * the limit; no letter is cut in two. Lines end with CRLF.
 */
export function foldByOctets(text: string): string {
  return text
    .replace(/\r\n[ \t]/g, '')
    .split('\r\n')
    .map(foldLine)
    .join('\r\n');
}

function foldLine(line: string): string {
  const encoder = new TextEncoder();
  let folded = '';
  let octets = 0;
  for (const letter of line) {
    const size = encoder.encode(letter).length;
    if (octets + size > LINE_OCTETS) {
      folded += '\r\n ';
      octets = 1;
    }
    folded += letter;
    octets += size;
  }
  return folded;
}
