/** Name of the lock that says that files are in use. */
function lockName(files: string): string {
  return `citrus-winters reading ${files}`;
}

const held = new Set<string>();

/** Says, for as long as this page or worker lives, that it reads a kept pack's files. */
export function heldByReader(files: string): void {
  if (held.has(files) || !navigator.locks) return;
  held.add(files);
  void navigator.locks
    .request(lockName(files), { mode: 'shared' }, () => new Promise<never>(() => {}))
    .catch(() => held.delete(files));
}

/** Does `work` if no page or worker reads these files now; tells whether it did. */
export async function ifNobodyReads(files: string, work: () => Promise<void>): Promise<boolean> {
  if (!navigator.locks) {
    await work();
    return true;
  }
  return navigator.locks.request(lockName(files), { ifAvailable: true }, async (lock) => {
    if (lock) await work();
    return lock !== null;
  });
}
