import { describe, expect, it } from 'vitest';
import { choose } from '../../../analysis/answer/choose.ts';
import type { OfferOf } from '../../../analysis/answer/choose-offer.ts';
import { CITRUS_TYPES } from '../../../analysis/tree/catalogue.ts';
import { asking, offer, OPEN, recording, typesOf } from './made-offers.ts';

const satsuma = typesOf('satsuma_owari');

describe('types that meet every wish', () => {
  it('are told with the least way: the spot as it is costs one offer', () => {
    const { offerOf, asked } = recording(() => offer());
    const chosen = choose(asking(satsuma), offerOf);
    expect(chosen.meet).toHaveLength(1);
    expect(chosen.meet[0].way).toEqual({ spotId: null, covers: [] });
    expect(asked).toHaveLength(1);
    expect(chosen.nearly).toEqual([]);
    expect(chosen.not).toEqual([]);
  });

  it('show each rule with both numbers', () => {
    const [{ wishes }] = choose(asking(satsuma), () => offer()).meet;
    expect(wishes.map(({ rule }) => rule)).toEqual([
      'Nothing to put on at night; you would cover 5 nights.',
      'Loses 1 crop in ten; you can bear 2.',
      'First crop in year 3; you would wait 5 years.',
      '9 of ten trees would have lived ten years (range from 8.5); you want 8.',
    ]);
  });

  it('take the page’s own cover before any other', () => {
    const page = { ...OPEN, covers: ['plastic-house'] as const };
    const chosen = choose(asking(satsuma, {}, page), (_, { covers }) =>
      offer({ livingInTen: covers.length > 0 ? 9 : 5 }),
    );
    expect(chosen.meet[0].way.covers).toEqual(['plastic-house']);
  });

  it('take the cover of least work that does it, and tell its nights', () => {
    const byCloth: OfferOf = (_, { covers }) => offer({ livingInTen: covers.includes('tied') ? 9 : 6 });
    const [{ way, wishes }] = choose(asking(satsuma), byCloth).meet;
    expect(way.covers).toEqual(['cloth-medium', 'tied']);
    expect(wishes[0].rule).toBe('To be covered on 3 nights a winter once grown; you would cover 5 nights.');
  });

  it('stand with more living first, then fewer crops lost, then fewer nights, then as in the catalogue', () => {
    const types = typesOf('meyer_lemon', 'satsuma_owari', 'kumquat_nagami', 'navel_orange', 'calamondin');
    const offers: Record<string, Partial<ReturnType<typeof offer>>> = {
      meyer_lemon: { livingInTen: 8.5 },
      satsuma_owari: { livingInTen: 9.52, lostCropsInTen: 1 },
      // 9.48 and 9.52 are both told as 9.5, so the crops decide.
      kumquat_nagami: { livingInTen: 9.48, lostCropsInTen: 0.4 },
      navel_orange: { livingInTen: 8.5 },
      calamondin: { livingInTen: 10 },
    };
    const chosen = choose(asking(types), (type) => offer(offers[type.id]));
    expect(chosen.meet.map(({ typeId }) => typeId)).toEqual([
      'calamondin',
      'kumquat_nagami',
      'satsuma_owari',
      'meyer_lemon',
      'navel_orange',
    ]);
  });

  it('say where the low end of the range fails the wish', () => {
    const [{ wishes }] = choose(asking(satsuma), () => offer({ livingInTenLow: 6.44 })).meet;
    expect(wishes[3]).toMatchObject({ met: true, offered: 9 });
    expect(wishes[3].rule).toBe(
      '9 of ten trees would have lived ten years; you want 8. It could be as few as 6.4.',
    );
  });

  it('are judged on the figures as told, which never round to none or to all', () => {
    const lost = (lostCropsInTen: number, livingInTen: number, wish: number) =>
      choose(asking(satsuma, { lostCropsInTen: wish, livingInTen: 9.9 }), () =>
        offer({ lostCropsInTen, livingInTen, livingInTenLow: null }),
      );
    expect(lost(2.04, 9.99, 2).meet[0].wishes.map(({ offered }) => offered)).toEqual([0, 2, 3, 9.9]);
    expect(lost(2.06, 10, 2).meet).toEqual([]);
    expect(lost(0.01, 10, 0).nearly[0].wishes[1]).toMatchObject({ offered: 0.1, met: false });
  });
});

describe('types that nearly do', () => {
  const crops =
    (lostCropsInTen: number): OfferOf =>
    () =>
      offer({ lostCropsInTen });

  it('miss one wish by no more than its margin', () => {
    expect(choose(asking(satsuma), crops(3)).nearly[0].wishes[1]).toMatchObject({
      met: false,
      rule: 'Loses 3 crops in ten; you can bear 2.',
    });
    expect(choose(asking(satsuma), crops(3.1)).not).toHaveLength(1);
    const years = (firstCropYear: number) => choose(asking(satsuma), () => offer({ firstCropYear }));
    expect([years(6).nearly.length, years(7).nearly.length]).toEqual([1, 0]);
    const living = (livingInTen: number) => choose(asking(satsuma), () => offer({ livingInTen }));
    expect([living(7).nearly.length, living(6.9).nearly.length]).toEqual([1, 0]);
    const nights = (nightsToCover: number, wish: number) =>
      choose(asking(satsuma, { nightsToCover: wish }), (_, { covers }) =>
        offer({ nightsToCover, livingInTen: covers.includes('tied') ? 9 : 1 }),
      );
    expect([nights(7.5, 5).nearly.length, nights(7.6, 5).nearly.length]).toEqual([1, 0]);
    expect([nights(1, 0).nearly.length, nights(1.1, 0).nearly.length]).toEqual([1, 0]);
  });

  it('miss no second one', () => {
    const chosen = choose(asking(satsuma), () => offer({ lostCropsInTen: 2.5, livingInTen: 7.5 }));
    expect([chosen.nearly.length, chosen.not.length]).toEqual([0, 1]);
  });

  it('do so by a weaker cover where the strongest asks for more nights as well', () => {
    const soil: OfferOf = (_, { covers }) =>
      offer({ nightsToCover: 6, livingInTen: covers.includes('tied') ? 7.9 : covers.length > 0 ? 7.5 : 6 });
    expect(choose(asking(satsuma), soil).nearly[0]).toMatchObject({ way: { covers: ['bare-soil'] } });
  });

  it('show the low end of a range without a warning where the wish is missed anyway', () => {
    const [{ wishes }] = choose(asking(satsuma), () => offer({ livingInTen: 7.5, livingInTenLow: 5 })).nearly;
    expect(wishes[3].rule).toBe('7.5 of ten trees would have lived ten years (range from 5); you want 8.');
  });

  it('are told what closes the gap: another spot before a spot and a cover', () => {
    const wall: OfferOf = (_, { spotId, covers }) =>
      offer({ livingInTen: spotId === 'heated-wall' || (spotId && covers.length > 0) ? 9 : 7.5 });
    const [{ closing, way }] = choose(asking(satsuma), wall).nearly;
    expect(way.spotId).toBeNull();
    expect(closing).toMatchObject({
      way: { spotId: 'heated-wall', covers: [] },
      words: 'At a wall of a heated house it meets every wish.',
    });
    expect(closing!.wishes.every(({ met }) => met)).toBe(true);

    const both: OfferOf = (_, { spotId, covers }) =>
      offer({ livingInTen: spotId && covers.includes('tied') ? 9 : 7.5 });
    expect(choose(asking(satsuma), both).nearly[0].closing).toMatchObject({
      way: { spotId: 'paving-edge', covers: ['cloth-medium', 'tied'] },
      words:
        'At the edge of a paved court or driveway, with medium frost cloth tied to the ground all round it meets every wish.',
    });
  });

  it('have no closing where nothing tried does, and none is looked for when only the wait is too long', () => {
    expect(choose(asking(satsuma), crops(2.5)).nearly[0].closing).toBeNull();
    const { offerOf, asked } = recording(() => offer({ firstCropYear: 6 }));
    expect(choose(asking(satsuma), offerOf).nearly[0].closing).toBeNull();
    expect(asked.every(({ spotId }) => spotId === null)).toBe(true);
  });

  it('never close the gap with the spot that the page has already', () => {
    const { offerOf, asked } = recording(crops(2.5));
    choose(asking(satsuma, {}, { ...OPEN, spotId: 'heated-wall' }), offerOf);
    expect(asked.some(({ spotId }) => spotId === 'heated-wall')).toBe(false);
    expect(asked.some(({ spotId }) => spotId === 'south-wall-heated')).toBe(true);
  });
});

describe('types that do not', () => {
  it('are told with the wish that stops them, at their best', () => {
    const covered: OfferOf = (_, { covers }) =>
      offer({
        nightsToCover: 7,
        livingInTen: covers.includes('tied') ? 7.5 : covers.includes('soil-bank') ? 6.9 : 2,
        livingInTenLow: null,
      });
    const { not } = choose(asking(satsuma), covered);
    expect(not[0].rule).toBe(
      '6.9 of ten trees would have lived ten years; you want 8. That is with soil banked over the graft.',
    );
  });

  it('are told with the nights where those stop them', () => {
    const covered: OfferOf = (_, { covers }) =>
      offer({ nightsToCover: 12, livingInTen: covers.includes('tied') ? 9 : 2 });
    expect(choose(asking(satsuma), covered).not[0].rule).toBe(
      'To be covered on 12 nights a winter once grown; you would cover 5 nights. That is under the strongest cover tried.',
    );
  });

  it('say so where even the strongest cover is too little', () => {
    const { not } = choose(asking(satsuma), (_, { covers }) => offer({ lostCropsInTen: 9 - covers.length }));
    expect(not[0].rule).toBe(
      'Loses 5 crops in ten; you can bear 2. That is under the strongest cover tried.',
    );
  });

  it('cost few offers when hopeless', () => {
    const { offerOf, asked } = recording(() => offer({ livingInTen: 2 }));
    choose(asking(satsuma), offerOf);
    expect(asked.length).toBeLessThanOrEqual(2);
    const late = recording(() => offer({ firstCropYear: 9 }));
    choose(asking(satsuma), late.offerOf);
    expect(late.asked).toHaveLength(1);
  });

  it('where nothing is known, say so', () => {
    const unknown: OfferOf = () =>
      offer({
        nightsToCover: null,
        lostCropsInTen: null,
        livingInTen: null,
        livingInTenLow: null,
        cropsByWinter: new Uint8Array(0),
      });
    const chosen = choose(asking(CITRUS_TYPES), unknown);
    expect(chosen).toMatchObject({ meet: [], nearly: [], pairs: [] });
    expect(chosen.not[0].rule).toBe('How many crops it would lose is not known here; you can bear 2.');
  });
});
