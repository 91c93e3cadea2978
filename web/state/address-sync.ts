import { readAddress, writeAddress } from './address.ts';
import type { Choices } from './choices.svelte.ts';

/** The part of a browser window this needs; a test passes its own. */
export interface AddressWindow {
  readonly location: { readonly search: string; readonly pathname: string; readonly hash: string };
  readonly history: {
    pushState(data: unknown, unused: string, url: string): void;
    replaceState(data: unknown, unused: string, url: string): void;
  };
  addEventListener(type: 'popstate', listener: () => void): void;
  removeEventListener(type: 'popstate', listener: () => void): void;
}

/**
 * Keep the address and the choices together: a choice is written to the address, Back and Forward are read from it.
 * `onIgnored` gets the sentences about values that made no sense. Returns the way to stop.
 */
export function keepAddress(
  choices: Choices,
  view: AddressWindow,
  onIgnored: (ignored: readonly string[]) => void,
): () => void {
  const follow = (): void => {
    const reading = readAddress(view.location.search);
    choices.restore(reading.chosen);
    onIgnored(reading.ignored);
  };
  const stopListening = choices.onChoose((chosen, step) => {
    const url = view.location.pathname + writeAddress(chosen) + view.location.hash;
    if (writeAddress(chosen) === view.location.search) return;
    if (step === 'push') view.history.pushState(null, '', url);
    else view.history.replaceState(null, '', url);
  });
  follow();
  view.addEventListener('popstate', follow);
  return () => {
    stopListening();
    view.removeEventListener('popstate', follow);
  };
}
