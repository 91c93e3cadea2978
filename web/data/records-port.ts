import { nightsThatHit } from '../engine/night-questions.ts';
import { RecordsDatabase } from '../engine/records-database.ts';
import type { RecordsPort } from '../state/ports.ts';

/** The database of the pack at `packUrl` (absolute, ending in `/`), for the Records view. */
export function makeRecordsPort(packUrl: string): RecordsPort {
  const database = new RecordsDatabase();
  return {
    open: (onProgress) => database.open(packUrl, onProgress),
    hitNights: ({ stationId, hours, limitC, gainCalmC, gainWindyC }) =>
      nightsThatHit(database, {
        stationId,
        hours,
        limitC,
        gains: { calmC: gainCalmC, windyC: gainWindyC },
      }),
    run: (sql) => database.run(sql),
    close: () => void database.close(),
  };
}
