import type { LaterPort, RecordsPort } from '../state/ports.ts';
import { makeRecordsPort } from './records-port.ts';

interface Shared {
  readonly port: RecordsPort;
  users: number;
}

const open = new Map<string, Shared>();

/**
 * The database of the pack at `packUrl` for one more part of the page: its engine takes some 35 MB of memory, so all parts
 * use one. It is closed when the last of them has closed theirs.
 */
export function shareRecords(
  packUrl: string,
  worker: Pick<LaterPort, 'nightsSource'>,
  make: typeof makeRecordsPort = makeRecordsPort,
): RecordsPort {
  const shared = open.get(packUrl) ?? { port: make(packUrl, worker), users: 0 };
  open.set(packUrl, shared);
  shared.users += 1;
  let closed = false;
  return {
    open: (onProgress) => shared.port.open(onProgress),
    hitNights: (question) => shared.port.hitNights(question),
    keptNights: (place) => shared.port.keptNights(place),
    run: (sql) => shared.port.run(sql),
    close: () => {
      if (closed) return;
      closed = true;
      shared.users -= 1;
      if (shared.users > 0) return;
      open.delete(packUrl);
      shared.port.close();
    },
  };
}
