import type { Attachment } from 'svelte/attachments';
import type { Paper } from '../../state/sheet-text.ts';

/** Sizes of type tried in turn, as shares of the full one: what is smallest, 6.8 points, is 5 with the least of them. */
const STEPS = [1.06, 1.03, 1, 0.97, 0.94, 0.91, 0.88, 0.85, 0.82, 0.79, 0.76, 0.73, 0.7];

/**
 * Keeps the content of a page on the page: the largest type that fits is chosen anew whenever the content changes. What
 * does not fit even in the smallest is marked `data-full`, so that nothing is cut in silence.
 */
export function fitPage(paper: Paper): Attachment<HTMLElement> {
  return (content) => {
    const fits = (): boolean =>
      content.scrollHeight <= content.clientHeight + 1 && content.scrollWidth <= content.clientWidth + 1;
    const settle = (): void => {
      const step = STEPS.find((share) => {
        content.style.setProperty('--s', String(share));
        return fits();
      });
      content.toggleAttribute('data-full', step === undefined);
    };
    content.dataset.paper = paper;
    const observer = new MutationObserver(settle);
    observer.observe(content, { subtree: true, childList: true, characterData: true });
    const loaded = (): void => settle();
    content.addEventListener('load', loaded, { capture: true });
    void document.fonts.ready.then(settle);
    settle();
    return () => {
      observer.disconnect();
      content.removeEventListener('load', loaded, { capture: true });
    };
  };
}
