import { describe, expect, it } from 'vitest';

import {
  disagreementWords,
  levelWords,
  rangeWords,
  sentenceEnd,
} from '../../../../web/format/answer-words.ts';
import { coverWords } from '../../../../web/format/cover-words.ts';
import { LEVEL_WORDS } from '../../../../web/format/level-words.ts';
import { winterBars } from '../../../../web/state/winter-bars.ts';
import { hoursOfWork, nightsToCover } from '../../../../web/views/sheet/cover-facts.ts';
import { fewRows } from '../../../../web/views/sheet/few-rows.ts';
import { hurtWinters, worstWinters } from '../../../../web/views/sheet/hurt-winters.ts';
import { fillBox } from '../../../../web/views/sheet/sheet-map.ts';
import { pictureSize } from '../../../../web/views/sheet/sheet-picture.ts';
import { sheetSources } from '../../../../web/views/sheet/sheet-sources.ts';
import { sheetType } from '../../../../web/views/sheet/type-facts.ts';
import { madeLife, madeRanking, madeType } from './made-answer.ts';

const bare = madeType('satsuma_owari', 'Satsuma mandarin (Owari type)');
const covered = madeType('satsuma_owari', 'Satsuma mandarin (Owari type)', 4);
const asked = {
  ...{ bare, covered, cover: coverWords(['cloth-heavy']), life: madeLife('satsuma_owari', 0.4, 0.6) },
  ...{ unit: 'F' as const, brief: false },
};

describe('a type on the sheet', () => {
  it('says in sentences what the page’s own answer says, without and with the cover, and how long it lives', () => {
    const { sentences, name } = sheetType(asked);
    const [leaf, kill] = [bare.levels[1], bare.levels[3]];
    expect(name).toBe('Satsuma mandarin');
    expect(sentences).toHaveLength(3);
    expect(sentences[0]).toMatch(
      /^Without a cover it would have lost leaves and twigs in about 1 winter in 8,/,
    );
    expect(sentences[0]).toContain(sentenceEnd(leaf).main);
    expect(sentences[0]).toContain(sentenceEnd(kill).main);
    expect(sentences[1]).toBe(
      `Under heavy frost cloth: leaves and twigs in about 1 winter in 32, life ${sentenceEnd(covered.levels[3]).main}.`,
    );
    expect(sentences[2]).toBe(
      'Planted here, living after ten years: 40% (30% to 50%); had every tree been hardened, 60% (50% to 70%).',
    );
  });

  it('tells leaf, life and fruit in rows with cold, basis, range and chance, each side of the cover', () => {
    const { rows } = sheetType(asked);
    expect(rows.map(({ level }) => level)).toEqual(['leaf', 'kill', 'fruit']);
    for (const row of rows) {
      const level = bare.levels.find((one) => one.level === row.level)!;
      const other = covered.levels.find((one) => one.level === row.level)!;
      expect(row.bare).toEqual({
        ...{ words: levelWords(level), range: rangeWords(level), chance: '50% (30% to 70%)' },
        count: { fruit: '3 of 60 winters', leaf: '2 of 60 winters', kill: '1 of 60 winters' }[
          row.level as string
        ],
      });
      expect(row.covered?.words).toBe(levelWords(other));
    }
    // Winters counted are told once: where none was, the words already say so.
    const never = { ...bare.levels[3], headline: { ...bare.levels[3].headline, basis: 'not seen' as const } };
    const unseen = sheetType({ ...asked, bare: { ...bare, levels: [...bare.levels.slice(0, 3), never] } });
    expect(unseen.rows.at(-2)!.bare.count).toBe('');
    // −4 °C and 1 °C of penalty: −3 °C.
    expect(rows[0].cold).toBe('26.6\u00a0°F for 4\u00a0h');
    expect(['found', 'recalled', 'inferred', 'practice']).toContain(rows[0].basis);
  });

  it('without a cover says nothing of one, and nothing of a life while none is known', () => {
    const { sentences, rows } = sheetType({ ...asked, covered: null, life: null });
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).not.toMatch(/cover/);
    expect(rows.every((row) => row.covered === null)).toBe(true);
  });

  it('says where curve and count don’t meet, of the tree as it would stand, briefly told or not', () => {
    const [fruit, leaf, ...others] = covered.levels;
    const unsure = { ...leaf, headline: { ...leaf.headline, agrees: false } };
    const doubted = { ...covered, levels: [fruit, unsure, ...others] };
    for (const brief of [false, true]) {
      const { sentences } = sheetType({ ...asked, covered: doubted, brief });
      expect(sentences.at(-1)).toBe(`${LEVEL_WORDS.leaf.label}: ${disagreementWords(unsure)}`);
      expect(sentences.filter((text) => text.includes('trust neither'))).toHaveLength(1);
    }
    const open = sheetType({ ...asked, bare: doubted, covered: null });
    expect(open.sentences.at(-1)).toContain(disagreementWords(unsure));
  });

  it('is briefer beside many others, and keeps the answer as the tree would stand', () => {
    expect(sheetType({ ...asked, brief: true }).sentences[0]).toMatch(/^Under its cover: /);
    expect(sheetType({ ...asked, brief: true, covered: null }).sentences[0]).toMatch(/^It would have lost /);
  });
});

describe('winters that would have hurt', () => {
  const types = [bare, madeType('meyer_lemon', 'Meyer lemon', 4)];
  const ranking = madeRanking(types);
  const hurt = hurtWinters(types, winterBars(ranking, 4, 'leaf'));

  it('are those in which any type lost something, with the worst of each', () => {
    expect(hurt.map(({ winter }) => winter)).toEqual([1962, 1970, 1983]);
    expect(hurt[2]).toEqual({ winter: 1983, complete: true, coldestC: -9, worst: ['kill', 'wood'] });
    expect(hurt[1].worst).toEqual(['fruit', 'fruit']);
  });

  it('are also those that are listed, not counted', () => {
    const [fruit] = bare.levels.filter(({ level }) => level === 'fruit');
    const counted = { ...fruit.counted, hit_incomplete: [1975] };
    const type = { ...bare, levels: [{ ...fruit, counted }] };
    const bars = winterBars(ranking, 4, 'leaf').map((bar) =>
      bar.winter === 1975 ? { ...bar, complete: false } : bar,
    );
    expect(hurtWinters([type], bars).map(({ winter, complete }) => [winter, complete])).toEqual([
      [1962, true],
      [1970, true],
      [1975, false],
      [1983, true],
    ]);
  });

  it('of one harm are kept by how cold they were', () => {
    const winter = (label: number, coldestC: number | null) =>
      ({ winter: label, complete: true, coldestC, worst: ['leaf'] }) as const;
    const all = [winter(1961, -3), winter(1964, null), winter(1966, -8), winter(1968, -5)];
    const kept = (room: number) => worstWinters(all, room).shown.map((one) => one.winter);
    expect([kept(1), kept(2), kept(3)]).toEqual([[1966], [1966, 1968], [1961, 1966, 1968]]);
  });

  it('keep the worst where there is no room, in their order, and say how many are left out', () => {
    const { shown, more } = worstWinters(hurt, 2);
    expect(shown.map(({ winter }) => winter)).toEqual([1962, 1983]);
    expect(more).toBe(1);
    expect(worstWinters(hurt, 9)).toEqual({ shown: hurt, more: 0 });
  });
});

describe('the work of a cover', () => {
  it('stands hour by hour, each hour once', () => {
    const hours = hoursOfWork(['cloth-heavy', 'tied', 'watered-soil'], false, 'C');
    expect(hours.length).toBeGreaterThan(2);
    expect(new Set(hours.map(({ when }) => when)).size).toBe(hours.length);
    expect(hours.flatMap(({ what }) => what).join(' ')).toMatch(/Put the cover on/);
    expect(
      hoursOfWork([], false, 'C')
        .flatMap(({ what }) => what)
        .join(' '),
    ).not.toMatch(/cover/);
  });

  it('tells mean and worst winter of the nights', () => {
    const burden = (total: number, worst: { winter: number; nights: number } | null) => ({
      ...{ total, perWinter: total / 60, worst },
    });
    const record = { completeWinters: 60, toCover: burden(240, { winter: 1990, nights: 12 }) } as never;
    expect(nightsToCover(record, 'north')).toBe(
      'It would have gone on 4.0 nights a winter on average, and on 12 nights in the worst, 1989–90.',
    );
    const never = { completeWinters: 60, toCover: burden(0, null) } as never;
    expect(nightsToCover(never, 'north')).toMatch(/In none of these winters/);
    expect(nightsToCover({ completeWinters: 0 } as never, 'north')).toBe('');
  });
});

describe('the foot of the sheet', () => {
  it('names each source once, with whom it is owed to and its licence', () => {
    const meta = {
      title: 'Sallowmere Coast',
      files: [{ path: 'grid.bin', bytes: 1, sha256: '' }],
      sources: [
        { name: 'Invented readings.', licence: 'none', attribution: 'Invented readings' },
        { name: 'Outlines', licence: 'public domain.', attribution: 'A Mapmaker' },
        { name: 'Heights', licence: '', attribution: 'A Surveyor' },
      ],
    };
    const [records, made] = sheetSources(meta);
    expect(made).toMatch(/Map: outlines and heights of the pack\.$/);
    expect(sheetSources({ ...meta, files: [] })[1]).toMatch(/Map: outlines of the pack\.$/);
    expect(records).toBe(
      'Records: Invented readings, none; Outlines, A Mapmaker, public domain; Heights, A Surveyor.',
    );
  });
});

describe('pictures on the sheet', () => {
  it('keep the place in the middle as far as the map goes', () => {
    const map = { widthPx: 400, heightPx: 400, at: { x: 200, y: 100 } };
    expect(fillBox(map, 200, 100)).toEqual({ scale: 0.5, left: 0, top: 0 });
    expect(fillBox({ ...map, at: { x: 390, y: 200 } }, 100, 200)).toEqual({ scale: 0.5, left: -100, top: 0 });
    expect(fillBox({ ...map, at: null }, 200, 100)).toEqual({ scale: 0.5, left: 0, top: -50 });
  });

  it('have 300 dots to the inch of their paper', () => {
    expect(pictureSize('letter')).toEqual({ width: 2550, height: 3300 });
    expect(pictureSize('a4')).toEqual({ width: 2480, height: 3508 });
  });

  it('show of the year only what has room', () => {
    const rows = ['freeze 0', 'leaf', 'kill', 'harvest', 'bloom 4', 'prune 2'].map((key) => ({
      key,
      starts: true,
    }));
    expect(fewRows(rows as never).map(({ key, starts }) => [key, starts])).toEqual(
      ['leaf', 'kill', 'harvest', 'prune 2'].map((key) => [key, false]),
    );
  });
});
