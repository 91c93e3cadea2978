import { t } from '../../analysis/language/t.ts';
import { OFFLINE_KEY } from './offline-state.svelte.ts';

/** The part of the browser's storage this needs. */
export interface TextStorage {
  readonly length: number;
  key(at: number): string | null;
  getItem(key: string): string | null;
  removeItem(key: string): void;
}

/** Texts of one kind that this page stored in this browser. */
export interface StoredTexts {
  readonly id: string;
  readonly label: string;
  readonly bytes: number;
  readonly keys: readonly string[];
}

/** Which keys belong together; the first that fits. All else of ours is a setting. */
const GROUPS: readonly { readonly id: string; readonly label: string; readonly fits: RegExp }[] = [
  { id: 'customers', label: t`Last customers`, fits: /^desk-customers$/ },
  { id: 'stock', label: t`Stock list`, fits: /^desk-stock/ },
  { id: 'readings', label: t`Readings of an own thermometer`, fits: /^citrus-winters-own-thermometer$/ },
  { id: 'trees', label: t`Trees to cover tonight`, fits: /^citrus-winters-tonight-trees$/ },
  {
    id: 'settings',
    label: t`Settings: units, language, colours and the like`,
    fits: /^(citrus-winters|desk|archive)-/,
  },
];

/** What of texts is stored, kind by kind; that nothing is to be kept unasked is not counted, nor cleared. */
export function storedTexts(storage: TextStorage | null): readonly StoredTexts[] {
  const found = new Map<string, { bytes: number; keys: string[] }>();
  for (const key of keysOf(storage)) {
    const group = GROUPS.find(({ fits }) => fits.test(key));
    if (!group || key === OFFLINE_KEY) continue;
    const entry = found.get(group.id) ?? { bytes: 0, keys: [] };
    found.set(group.id, entry);
    entry.keys.push(key);
    entry.bytes += new TextEncoder().encode(key + (storage?.getItem(key) ?? '')).length;
  }
  return GROUPS.flatMap(({ id, label }) => {
    const entry = found.get(id);
    return entry ? [{ id, label, ...entry }] : [];
  });
}

function keysOf(storage: TextStorage | null): string[] {
  try {
    return Array.from({ length: storage?.length ?? 0 }, (_, at) => storage!.key(at) ?? '').filter(Boolean);
  } catch {
    return [];
  }
}
