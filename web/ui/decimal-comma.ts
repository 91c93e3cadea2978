/**
 * Lets a decimal comma be typed in every field for a number. A browser takes the decimal sign of its own language only, drops the
 * other without a word, and `2,5` becomes 25; where it drops a comma, a point is put in its place. Returns the way to stop.
 */
export function takeDecimalCommas(page: Document): () => void {
  const check = ({ data, target }: InputEvent): void => {
    if (data !== ',' || !(target instanceof HTMLInputElement) || target.type !== 'number') return;
    let isTaken = false;
    const take = (): void => void (isTaken = true);
    target.addEventListener('input', take, { once: true });
    setTimeout(() => {
      target.removeEventListener('input', take);
      // Old, but the only way to type for the reader, at the cursor and so that it can be undone.
      if (!isTaken) page.execCommand('insertText', false, '.');
    });
  };
  page.addEventListener('beforeinput', check);
  return () => page.removeEventListener('beforeinput', check);
}
