import { describe, expect, it } from 'vitest';
import { choose } from '../../../../analysis/answer/choose.ts';
import { SPOTS_TRIED } from '../../../../analysis/answer/choose-ways.ts';
import type { Chosen, Way } from '../../../../analysis/answer/choosing.ts';
import { findNamedSpot } from '../../../../analysis/spot/named-spots.ts';
import {
  chosenSentence,
  coversTold,
  inOrder,
  isPageWay,
  spotCautions,
  useWords,
  waySentence,
} from '../../../../web/views/choose/choose-words.ts';
import { choosingRules } from '../../../../web/views/choose/choosing-rules.ts';
import { asking, offer, typesOf } from '../../../analysis/answer/made-offers.ts';

const way = (spotId: string | null, ...covers: Way['covers'][number][]): Way => ({ spotId, covers });

/** So many that meet, nearly do, don't. */
function counts(meet: number, nearly: number, not: number): Chosen {
  const choice = { typeId: 't', name: 'T', way: way(null), wishes: [], closing: null };
  const many = <T>(count: number, one: T): T[] => Array.from({ length: count }, () => one);
  return {
    meet: many(meet, choice),
    nearly: many(nearly, choice),
    not: many(not, { typeId: 't', name: 'T', rule: '' }),
    pairs: [],
  };
}

describe('what came of it, in a sentence', () => {
  it('counts those that meet and nearly do', () => {
    expect(chosenSentence(counts(3, 2, 29), 'Here')).toBe(
      'Of 34 kinds, 3 at Here meet all that you want and 2 nearly do.',
    );
    expect(chosenSentence(counts(1, 1, 0), 'Here')).toBe(
      'Of 2 kinds, 1 at Here meets all that you want and 1 nearly does.',
    );
    expect(chosenSentence(counts(1, 0, 0), 'Here')).toBe('Of 1 kind, 1 at Here meets all that you want.');
    expect(chosenSentence(counts(0, 2, 3), 'Here')).toBe(
      'Of 5 kinds, none at Here meets all that you want, but 2 nearly do.',
    );
    expect(chosenSentence(counts(0, 0, 5), 'Here')).toBe(
      'Of 5 kinds, none at Here meets all that you want, nor nearly.',
    );
  });
});

describe('a way against what the page has', () => {
  it('is told by what differs', () => {
    expect(waySentence(way(null), [])).toBe('As it stands, without a cover.');
    expect(waySentence(way(null), ['sheet', 'tied'])).toBe('Without the cover chosen above.');
    expect(waySentence(way(null, 'tied', 'sheet'), ['sheet', 'tied'])).toBe('Under the cover chosen above.');
    expect(waySentence(way(null, 'soil-bank'), [])).toBe('With soil banked over the graft.');
    expect(waySentence(way('heated-wall'), [])).toBe('At a wall of a heated house.');
    expect(isPageWay(way('heated-wall'), [])).toBe(false);
  });

  it('is set by a button that says what it sets', () => {
    expect([way(null), way(null, 'sheet'), way('pond'), way('pond', 'sheet')].map(useWords)).toEqual([
      'Take the cover off',
      'Use this cover',
      'Use this spot',
      'Use this spot and cover',
    ]);
  });
});

describe('what stands beside the choices', () => {
  const chosen = choose(asking(typesOf('satsuma_owari', 'meyer_lemon')), (type, { spotId, covers }) =>
    offer({
      livingInTen:
        type.id === 'satsuma_owari'
          ? covers.includes('soil-bank')
            ? 9
            : 5
          : spotId === 'paving-edge'
            ? 9
            : 7.5,
    }),
  );

  it('is every cover and spot told of, closings among them', () => {
    expect(coversTold(chosen)).toEqual(['soil-bank']);
    expect(spotCautions(chosen)).toEqual([
      `Edge of a paved court or driveway: ${findNamedSpot('paving-edge')!.about}`,
    ]);
  });

  it('shows the trees that live first, the nights last, none left out', () => {
    expect(inOrder(chosen.meet[0].wishes).map(({ wish }) => wish)).toEqual([
      'livingInTen',
      'lostCropsInTen',
      'yearsToWait',
      'nightsToCover',
    ]);
  });

  it('knows every spot it tries, and tells degrees in the page’s unit only', () => {
    for (const { id } of SPOTS_TRIED) {
      const { calm, windy } = findNamedSpot(id)!.gain;
      expect(Math.min(calm.centreC, windy.centreC), id).toBeGreaterThan(0);
    }
    const words = (unit: 'F' | 'C') =>
      choosingRules(unit)
        .map((rule) => rule.words)
        .join(' ');
    expect(words('F')).toMatch(/2\.0\s°F/);
    expect(words('F')).not.toContain('°C');
    expect(words('C')).toMatch(/1\.1\s°C/);
    expect(words('C')).not.toContain('°F');
  });
});
