import { readProtection, type ProtectionTexts } from '../../../analysis/answer/protection.ts';
import type { TonightTree } from '../../../analysis/cover/tonight.ts';
import { ALL_CHOICES } from '../../../analysis/cover/cover-ids.ts';
import { t } from '../../../analysis/language/t.ts';
import { findNamedSpot } from '../../../analysis/spot/named-spots.ts';
import { findType } from '../../../analysis/tree/catalogue.ts';
import type { LevelGains, LevelGainSpreads } from '../../../analysis/tree/level-gains.ts';
import { byLevel } from '../../../analysis/tree/levels.ts';
import type { TreeState } from '../../../analysis/tree/penalties.ts';
import { gainsAt } from '../../../analysis/winter/gain-spread.ts';
import { plural } from '../../format/numbers.ts';
import { shortTypeName } from '../../format/type-names.ts';
import { keep, type Storage } from '../../state/kept.ts';

/** As chosen above for the whole page. */
export const AS_CHOSEN = 'chosen';

/** One of the reader's own trees. */
export interface OwnTree {
  readonly typeId: string;
  /** Years since planting, 1-100. */
  readonly ageYears: number;
  readonly container: boolean;
  readonly fruitLoad: boolean;
  /** Id of a named spot, or {@link AS_CHOSEN}. */
  readonly spot: string;
  /** Ids of its cover `a,b`, empty for none, or {@link AS_CHOSEN}. */
  readonly cover: string;
}

export const TONIGHT_KEY = 'citrus-winters-tonight-trees';
export const TREES_MAX = 6;
const AGE_MAX = 100;

/** The trees kept on this device; what makes no sense is left out. */
export function readTrees(storage: Storage | null): readonly OwnTree[] {
  try {
    const kept: unknown = JSON.parse(storage?.getItem(TONIGHT_KEY) ?? '[]');
    return Array.isArray(kept) ? kept.filter(isOwnTree).slice(0, TREES_MAX) : [];
  } catch {
    return [];
  }
}

/** Keeps the trees, or forgets them where there are none. */
export function keepTrees(storage: Storage | null, trees: readonly OwnTree[]): void {
  keep(storage, TONIGHT_KEY, trees.length === 0 ? null : JSON.stringify(trees));
}

function isOwnTree(value: unknown): value is OwnTree {
  if (typeof value !== 'object' || value === null) return false;
  const { typeId, ageYears, container, fruitLoad, spot, cover } = value as Record<string, unknown>;
  return (
    typeof typeId === 'string' &&
    findType(typeId) !== undefined &&
    isAge(ageYears) &&
    typeof container === 'boolean' &&
    typeof fruitLoad === 'boolean' &&
    typeof spot === 'string' &&
    (spot === AS_CHOSEN || findNamedSpot(spot) !== undefined) &&
    typeof cover === 'string' &&
    (cover === AS_CHOSEN || cover === '' || cover.split(',').every(isCoverId))
  );
}

/** Whether years since planting may be so. */
export function isAge(value: unknown): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= 1 && value <= AGE_MAX;
}

function isCoverId(id: string): boolean {
  return (ALL_CHOICES as readonly string[]).includes(id);
}

/** What the page has chosen for all trees. */
export interface ChosenForAll {
  readonly bareTexts: ProtectionTexts;
  readonly ids: readonly string[];
  /** Condition, hardening and rootstock. */
  readonly tree: TreeState;
}

/** The reader's trees as `tonight` wants them, labelled by their numbers from 1. */
export function tonightTrees(
  trees: readonly OwnTree[],
  { bareTexts, ids, tree }: ChosenForAll,
): readonly TonightTree[] {
  return trees.map((own, i) => {
    const { ageYears, container, fruitLoad } = own;
    const spot = own.spot === AS_CHOSEN ? bareTexts : { ...bareTexts, ...named(own.spot) };
    const texts = { ...spot, container, cover: null };
    const cover = own.cover === AS_CHOSEN ? ids : own.cover === '' ? [] : own.cover.split(',');
    return {
      label: String(i + 1),
      type: findType(own.typeId)!,
      tree: { ...tree, ageYears, container, fruitLoad },
      without: centres(readProtection(texts).gains),
      withCover: centres(readProtection({ ...texts, cover: cover.join(',') || null }).gains),
      cover,
    };
  });
}

/** `Satsuma mandarin, 3 years, in a pot, with fruit`. */
export function treeName({ typeId, ageYears, container, fruitLoad }: OwnTree): string {
  return [
    shortTypeName(findType(typeId)?.name ?? typeId),
    ageYears > 5 ? t`mature` : plural(ageYears, t`year`, t`years`),
    ...(container ? [t`in a pot`] : []),
    ...(fruitLoad ? [t`with fruit`] : []),
  ].join(', ');
}

function named(spot: string): Pick<ProtectionTexts, 'spot' | 'yard' | 'measured'> {
  return { spot, yard: null, measured: null };
}

function centres(gains: LevelGainSpreads): LevelGains {
  return byLevel((level) => gainsAt(gains[level], 'centreC'));
}
