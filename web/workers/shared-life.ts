import { LifeClient } from './life-client.ts';

let client: LifeClient | null = null;

/** The page's one client of the worker that goes through nights; the worker starts at the first question. */
export function sharedLife(): LifeClient {
  client ??= new LifeClient();
  return client;
}
