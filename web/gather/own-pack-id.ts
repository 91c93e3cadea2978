const PREFIX = 'own-';

/** An id for a pack made or brought here: nothing in it tells of its content, since addresses carry it. */
export function ownPackId(): string {
  return PREFIX + crypto.randomUUID().slice(0, 8);
}

/** True for ids of packs that no server has. */
export function isOwnPack(id: string): boolean {
  return id.startsWith(PREFIX);
}
