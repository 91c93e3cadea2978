import { rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Assessment } from '../../../analysis/answer/assessment.ts';
import { strictProtection } from '../../../analysis/answer/protection.ts';
import { READY_YARDS } from '../../../analysis/spot/ready-yards.ts';
import { yardFileText } from '../../../analysis/spot/yard-file.ts';
import { writeYardText } from '../../../analysis/spot/yard-text.ts';
import { BARE_TEXTS } from '../../analysis/answer/bare-texts.ts';
import { CommandHost } from './command.ts';
import { buildInventedPack } from './invented-pack.ts';

let work: string;
let pack: string;
const host = new CommandHost();

beforeAll(async () => {
  ({ work, pack } = await buildInventedPack());
}, 60_000);
afterAll(() => {
  host.close();
  return rm(work, { recursive: true, force: true });
});

const assess = (...args: string[]) =>
  host.command('assess', '--pack', pack, '--station', 'ZZTEST1', '--types', 'satsuma_owari', ...args);
const levelsOf = async (...args: string[]) => {
  const outcome = await assess('--json', ...args);
  expect(outcome).toMatchObject({ code: 0, err: '' });
  return JSON.parse(outcome.out) as Assessment;
};

describe('assess --spot --cover', () => {
  it('counts with what spot and cover gain, by level, and prints them', async () => {
    const bare = await levelsOf();
    const covered = await levelsOf('--spot', 'out-of-wind', '--cover', 'cloth-medium,tied,soil-bank');
    const { gains } = strictProtection({
      ...BARE_TEXTS,
      spot: 'out-of-wind',
      cover: 'cloth-medium,tied,soil-bank',
    });
    covered.types[0].levels.forEach((level, i) => {
      expect(level.gain_calm_c).toBe(gains[level.level].calm.centreC);
      expect(level.gain_windy_c).toBe(gains[level.level].windy.centreC);
      expect(level.counted.hits).toBeLessThanOrEqual(bare.types[0].levels[i].counted.hits);
    });
    const nights = (answer: Assessment) => answer.types[0].levels[0].nights_per_winter!;
    expect(nights(covered)).toBeLessThan(nights(bare));
    // The winters printed are those of the leaves.
    const { calm, windy } = gains.leaf;
    covered.history.forEach(({ m_c }, w) => {
      const before = bare.history[w].m_c['4'];
      if (before === null) return;
      expect(m_c['4']! - before).toBeGreaterThanOrEqual(Math.min(calm.centreC, windy.centreC) - 0.011);
      expect(m_c['4']! - before).toBeLessThanOrEqual(Math.max(calm.centreC, windy.centreC) + 0.011);
    });
    const text = await assess('--spot', 'out-of-wind', '--cover', 'cloth-medium,tied');
    expect(text.out).toMatch(/Spot: sunny side, out of the cold wind; cover: medium frost cloth; tied/);
    expect(text.out).toMatch(/on calm nights, .* on windy nights/);
  });

  it('takes a spot of a yard saved from the page, and names the spots when it is not among them', async () => {
    const { yard } = READY_YARDS[0];
    const [spot] = yard.spots;
    const file = path.join(work, 'yard.json');
    await writeFile(file, yardFileText(yard));
    const { gains } = strictProtection({
      spot: `yard:${spot.at.join(',')}`,
      yard: writeYardText(yard),
      measured: null,
      cover: null,
      hemisphere: 'north',
      container: false,
    });
    const [level] = (await levelsOf('--yard', file, '--spot', spot.name)).types[0].levels;
    expect(level.gain_calm_c).toBe(gains.fruit.calm.centreC);
    const wrong = await assess('--yard', file, '--spot', 'elsewhere');
    expect(wrong).toMatchObject({ code: 1, out: '' });
    expect(wrong.err).toContain(`--spot "elsewhere" is not marked in yard.json; its spots: "${spot.name}"`);
  });

  it.each([
    ['an unknown spot', ['--spot', 'attic'], /no spot "attic"/],
    ['lights not confirmed', ['--cover', 'lights'], /ground-fault/],
    ['readings that are none', ['--measured', 'mild'], /measured=mild/],
  ])('refuses %s with one sentence and exit code 1', async (_, args, expected) => {
    const outcome = await assess(...args);
    expect(outcome).toMatchObject({ code: 1, out: '' });
    expect(outcome.err.trim().split('\n')).toHaveLength(1);
    expect(outcome.err).toMatch(expected);
  });

  it('refuses a file that is no yard, and a yard without a spot', async () => {
    const file = path.join(work, 'broken.json');
    await writeFile(file, '{"schema": 1, "things": 3');
    const broken = await assess('--yard', file, '--spot', 'warm');
    expect(broken).toMatchObject({ code: 1, out: '' });
    expect(broken.err).toContain('broken.json');
    expect(await assess('--yard', file)).toMatchObject({ code: 2, out: '' });
  });
});
