import { fahrenheitToCelsius } from '../units/temperature.ts';
import { byLevel, type Level } from './levels.ts';
import { typeName } from './type-names.ts';
import figures from './types.json';

/** How well a figure is known: read in its source, recalled, inferred from neighbours, or the trade's practice. */
export type Basis = 'found' | 'memory' | 'inferred' | 'practice';
/** How far hardening carries a type's threshold: see `penaltiesAt`. */
export type Hardening = 'slight' | 'moderate' | 'strong';
export type Use = 'eating' | 'cooking' | 'rootstock';

/** Cold that takes one level of a mature, healthy, hardened tree: at or below `centreC` for `hours` hours. */
export interface Threshold {
  readonly lowC: number;
  readonly centreC: number;
  readonly highC: number;
  readonly hours: number;
  readonly basis: Basis;
}

export interface CitrusType {
  readonly id: string;
  readonly name: string;
  readonly botanical: string;
  readonly use: Use;
  readonly thresholds: Readonly<Record<Level, Threshold>>;
  readonly hardening: Hardening;
  /** First and last month of harvest (1-12) on the Gulf coast and in California; the span may cross the new year. */
  readonly harvest: {
    readonly gulf: readonly number[];
    readonly california: readonly number[];
    readonly basis: Basis;
  };
  /** Keys of `sourceOf`. */
  readonly sources: readonly string[];
  readonly confidence: 'low' | 'medium' | 'high';
}

/** The 37 types, tenderest group first, in the order of the data file. */
export const CITRUS_TYPES: readonly CitrusType[] = figures.map((entry) => ({
  id: entry.id,
  name: nameOf(entry.id),
  botanical: entry.botanical,
  use: entry.use as Use,
  thresholds: byLevel((level) => threshold(entry[level])),
  hardening: entry.hardening as Hardening,
  harvest: { ...entry.harvest, basis: entry.harvest.basis as Basis },
  sources: entry.sources,
  confidence: entry.confidence as CitrusType['confidence'],
}));

const BY_ID = new Map(CITRUS_TYPES.map((type) => [type.id, type]));

/** A type by its id, `undefined` when there is none. */
export function findType(id: string): CitrusType | undefined {
  return BY_ID.get(id);
}

/** @throws Error for a type that the names lack */
function nameOf(id: string): string {
  const name = typeName(id);
  if (name === undefined) throw new Error(`Type "${id}" has no name in type-names.json.`);
  return name;
}

function threshold(entry: { f: number[]; hours: number; basis: string }): Threshold {
  const [lowC, centreC, highC] = entry.f.map(fahrenheitToCelsius);
  return { lowC, centreC, highC, hours: entry.hours, basis: entry.basis as Basis };
}
