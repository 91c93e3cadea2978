import { tick } from 'svelte';
import type { Paper } from '../../state/sheet-text.ts';

/** Sizes as CSS and printers name them. */
export const PAPER_MM: Readonly<Record<Paper, { readonly width: number; readonly height: number }>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};

/** How the size of a page is told to the printer. */
const PAGE_SIZE: Readonly<Record<Paper, string>> = { a4: 'A4', letter: 'letter' };

/**
 * Prints the sheet and nothing else: while it prints, `data-printing` on the root hides the rest, and the page takes the
 * sheet's size. The browser's own command prints the whole page as ever.
 */
export async function printSheet(paper: Paper): Promise<void> {
  const root = document.documentElement;
  const size = document.createElement('style');
  size.textContent = `@page { size: ${PAGE_SIZE[paper]} portrait; margin: 0; }`;
  document.head.append(size);
  root.dataset.printing = 'sheet';
  const done = (): void => {
    delete root.dataset.printing;
    size.remove();
  };
  addEventListener('afterprint', done, { once: true });
  await tick();
  print();
}
