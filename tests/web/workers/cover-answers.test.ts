import { describe, expect, it } from 'vitest';
import type { Headline, LevelAnswer } from '../../../analysis/answer/assessment.ts';
import { combinations } from '../../../analysis/cover/combinations.ts';
import { MATURE_TREE } from '../../../analysis/tree/penalties.ts';
import type { Level } from '../../../analysis/tree/levels.ts';
import { PackAnswers } from '../../../web/workers/pack-answers.ts';
import { WinterTiles } from '../../../web/workers/winter-tiles.ts';
import { madeFetch, PACK_URL } from './made-pack.ts';

const never = async (): Promise<boolean> => false;
const TYPE = 'meyer_lemon';
const place = { by: 'station' as const, id: 'S3' };
const BARE = {
  ...{ spot: 'heated-wall', yard: null, measured: null, cover: null },
  ...{ hemisphere: 'north' as const, container: false },
};
const asked = (level: Level) => ({
  ...{ packUrl: PACK_URL, place, tree: MATURE_TREE, years: 10, typeId: TYPE, level, protection: BARE },
});
const CANDIDATES = ['watered-soil', 'cloth-light', 'cloth-heavy', 'tied', 'soil-bank', 'plastic-house'];

async function made(): Promise<PackAnswers> {
  const { fetcher } = madeFetch(8);
  return new PackAnswers(await WinterTiles.open(PACK_URL, fetcher));
}

/** The answer of the ranking under a cover. */
async function ranked(answers: PackAnswers, cover: readonly string[], level: Level): Promise<LevelAnswer> {
  const protection = { ...BARE, cover: cover.length === 0 ? null : cover.join(',') };
  const { types } = await answers.assess({ ...asked(level), protection });
  return types.find(({ id }) => id === TYPE)!.levels.find((entry) => entry.level === level)!;
}

/** Best estimate behind a headline: the curve's, no longer than the count's beyond twice the record. */
function estimate({ headline, fitted, counted }: LevelAnswer): number {
  if (headline.basis !== 'beyond') return headline.period ?? counted.winters;
  return Math.max(Math.min(fitted?.period ?? Infinity, counted.period ?? Infinity), headline.period!);
}

describe('covers on a spot', () => {
  for (const level of ['leaf', 'kill'] as const) {
    it(`are told as the ranking tells them, ${level}`, async () => {
      const answers = await made();
      const covers = [['cloth-heavy'], ['cloth-heavy', 'tied'], ['soil-bank'], ['watered-soil', 'sheet']];
      const periods = (await answers.coverPeriods({ ...asked(level), covers }, never))!;
      expect(periods.none).toEqual(await ranked(answers, [], level));
      const headlines: Headline[] = [];
      for (const cover of covers) headlines.push((await ranked(answers, cover, level)).headline);
      expect(periods.headlines).toEqual(headlines);
    });

    it(`are searched for the least that does it, ${level}`, async () => {
      const answers = await made();
      const bare = estimate(await ranked(answers, [], level));
      for (const onceIn of [Math.floor(bare / 2) || 1, Math.ceil(bare * 1.3), Math.ceil(bare * 3)]) {
        const found = await answers.leastCover({ ...asked(level), candidates: CANDIDATES, onceIn });
        const inOrder: { ids: readonly string[]; period: number; answer: LevelAnswer }[] = [];
        for (const { ids } of combinations(CANDIDATES, [level])) {
          const answer = await ranked(answers, ids, level);
          inOrder.push({ ids, period: estimate(answer), answer });
        }
        const wanted = inOrder.find(({ period }) => period > onceIn);
        expect(found.least?.ids).toEqual(wanted?.ids);
        if (found.least) expect(found.least.answer).toEqual(wanted!.answer);
        else
          expect(found.best.answer).toEqual(inOrder.reduce((a, b) => (b.period > a.period ? b : a)).answer);
      }
    });
  }

  it('stop between two covers when overtaken, and refuse a type that is not known', async () => {
    const answers = await made();
    let asks = 0;
    const overtaken = async () => ++asks > 2;
    const covers = [['cloth-light'], ['cloth-medium'], ['cloth-heavy'], ['sheet']];
    expect(await answers.coverPeriods({ ...asked('leaf'), covers }, overtaken)).toBeNull();
    expect(asks).toBe(3);
    await expect(answers.coverPeriods({ ...asked('leaf'), typeId: 'none', covers }, never)).rejects.toThrow(
      'not among',
    );
    await expect(
      answers.leastCover({ ...asked('leaf'), candidates: ['heat-lamp'], onceIn: 25 }),
    ).rejects.toThrow('There is no cover "heat-lamp"');
  });
});
