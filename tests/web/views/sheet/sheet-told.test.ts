import { describe, expect, it } from 'vitest';
import { strictProtection } from '../../../../analysis/answer/protection.ts';
import { MATURE_TREE } from '../../../../analysis/tree/penalties.ts';
import type { ResolvedPlace } from '../../../../web/state/resolve-place.ts';
import { tellSheet, type SheetAsked } from '../../../../web/views/sheet/sheet-told.ts';
import { BARE_TEXTS } from '../../../analysis/answer/bare-texts.ts';
import { PACK } from '../../state/sample-pack.ts';
import { madeRanking, madeType } from './made-answer.ts';

const IDS = ['satsuma_owari', 'meyer_lemon', 'yuzu'];
const ranking = (factor: number) => madeRanking(IDS.map((id) => madeType(id, `Invented ${id}`, factor)));
const [station] = PACK.stations;
const place = {
  ...{ kind: 'station', label: station.name, station, distanceKm: 0 },
} as unknown as ResolvedPlace;

/** A tree under heavy cloth at a station, unless told. */
function told(more: Partial<SheetAsked> = {}) {
  return tellSheet({
    ...{ typeIds: IDS.slice(0, 1), bare: ranking(1), covered: ranking(4), place, stations: PACK.stations },
    ...{ tree: MATURE_TREE, coverIds: ['cloth-heavy', 'tied'], life: null, nights: null },
    bareProtection: strictProtection(BARE_TEXTS),
    coveredProtection: strictProtection({ ...BARE_TEXTS, cover: 'cloth-heavy,tied' }),
    ...{ hemisphere: 'north', unit: 'F' },
    ...more,
  })!;
}
const open = { covered: null, coverIds: [] };

describe('the words of the sheet', () => {
  it('tell each of three types in fewer words than one or two, and pass over what has no answer', () => {
    const sentences = (count: number) =>
      told({ typeIds: IDS.slice(0, count) }).types.map((type) => type.sentences.length);
    expect([sentences(1), sentences(2), sentences(3)]).toEqual([[2], [2, 2], [1, 1, 1]]);
    expect(told({ typeIds: ['citron', 'yuzu'] }).types.map(({ id }) => id)).toEqual(['yuzu']);
    expect(told({ typeIds: ['citron'] })).toBeNull();
  });

  it('tell the cover’s work only where there is a cover', () => {
    const covered = told();
    expect(covered.cover.none).toBe(false);
    expect(covered.cover.hours.length).toBeGreaterThan(2);
    const bare = told(open);
    expect([bare.cover.none, bare.cover.hours, bare.cover.nights]).toEqual([true, [], '']);
    const ofGains = /A spot and a cover add their degrees/;
    expect([covered, bare].map(({ method }) => method.some((line) => ofGains.test(line)))).toEqual([
      true,
      false,
    ]);
  });

  it('tell where the winters were measured, and draw them for the leaves of the first type', () => {
    const { evidence, bars, hours, thresholdC, hurt, spot } = told(open);
    expect(evidence[0]).toMatch(/60 complete winters, .*, measured at this station\.$/);
    const far = { ...place, kind: 'postcode', distanceKm: 12.4 } as unknown as ResolvedPlace;
    expect(told({ ...open, place: far, unit: 'C' }).evidence[0]).toContain(
      `measured at ${station.name}, 12\u00a0km away.`,
    );
    const leaf = ranking(1).types[0].levels.find(({ level }) => level === 'leaf')!;
    const moved = Object.values(leaf.penalties_c).reduce((sum, penalty) => sum + penalty, 0);
    expect([hours, thresholdC]).toEqual([leaf.hours, leaf.threshold_c + moved]);
    expect(bars).toHaveLength(60);
    expect(hurt.map(({ winter }) => winter)).toEqual([1962, 1970, 1983]);
    expect(spot.name).toBe('In the open');
  });
});
