import { speak, spokenLocale, spokenPhrases, type Phrases } from '../../analysis/language/t.ts';

/** The first message a worker gets: what its page speaks. */
interface Spoken {
  readonly phrases: Phrases | null;
  readonly locale: string;
}

/** On the page: tells a worker just made what to speak. Nothing else may be sent before. */
export function told<W extends { postMessage(message: unknown): void }>(worker: W): W {
  worker.postMessage({ phrases: spokenPhrases(), locale: spokenLocale() } satisfies Spoken);
  return worker;
}

/**
 * In a worker: waits to be told what to speak, and only then loads what says something. `load` gives what takes the messages;
 * those that came meanwhile are handed over in their order.
 */
export function workOnceTold<M>(load: () => Promise<(event: MessageEvent<M>) => void>): void {
  const held: MessageEvent<M>[] = [];
  const hold = (event: MessageEvent<M>): void => void held.push(event);
  self.onmessage = ({ data: { phrases, locale } }: MessageEvent<Spoken>) => {
    self.onmessage = hold;
    speak(phrases, locale);
    void load().then((take) => {
      self.onmessage = take;
      held.forEach(take);
    });
  };
}
