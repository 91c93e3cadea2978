import type { Attachment } from 'svelte/attachments';

/**
 * Opens a fold whenever `wanted` comes true, and leaves it to the reader otherwise. Bound as an attribute, `open` would be
 * set again with every text beside it that changes, and shut a fold in the reader's face.
 */
export function openWhen(wanted: () => boolean): Attachment<HTMLDetailsElement> {
  return (fold) => {
    if (wanted()) fold.open = true;
  };
}
