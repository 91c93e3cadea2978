import { t } from '../../../analysis/language/t.ts';

/** One step from reading to answer: how it is made, where the source code is, and what it rests on. */
export interface MethodStep {
  readonly title: string;
  readonly paragraphs: readonly string[];
  /** Folder or file of the computation in the project. */
  readonly code: string;
  readonly sources: readonly string[];
}

/** The chain in the order of the work. */
export const METHOD_STEPS: readonly MethodStep[] = [
  {
    title: t`From readings to trustworthy days`,
    paragraphs: [
      t`The archive’s own quality flags are believed: a flagged value is taken out. Impossible values, spikes, values stuck for days, repeats and dates out of order are found by rules, and every one is counted by its reason under Records.`,
      t`Whole degrees Fahrenheit that an archive stored as tenths of a degree Celsius are turned back first, so that 28 °F is again 28 °F and not 28.04. A station read in the morning books its low again on the next, warmer day: such doubles are mended where the reading hour is known and marked doubtful where it is not.`,
    ],
    code: 'analysis/clean',
    sources: [t`documentation of the archives read`],
  },
  {
    title: t`From a low and two highs to hours of cold`,
    paragraphs: [
      t`A night runs from noon to noon by the sun and carries the date of its morning. Its sustained cold for so many hours is the level at or below which the air stayed without a break for that long: the smallest, over all windows of that length, of the window’s warmest value.`,
      t`Where hourly readings exist this is read off them; a hole of more than three hours makes the night unknown. Elsewhere the night is rebuilt: a sine up to sunset, a square-root fall from sunset to the low near sunrise, then corrected with constants fitted on airports that have both kinds of reading. A sustained level never falls as hours grow.`,
    ],
    code: 'analysis/night',
    sources: [
      t`Cesaraccio and others 2001 (S39)`,
      t`FAO Irrigation Paper 56 for the sun`,
      t`own fit on hourly airports`,
    ],
  },
  {
    title: t`Calm, windy or unclear`,
    paragraphs: [
      t`Where wind was measured: calm below 5 miles an hour (2.2 m/s) beside the night’s lowest reading, windy from 10 (4.5 m/s) on. Elsewhere by the shape of the days: a wide range between alike afternoons is calm; an afternoon 8 °C (14 °F) colder than the one before, or a narrow range on a day that stays near freezing, is windy. Anything else is unclear and gets the smaller of two gains.`,
    ],
    code: 'analysis/night/night-kind.ts',
    sources: [t`bounds of the trade`, t`table below for how often it errs`],
  },
  {
    title: t`Which winters count`,
    paragraphs: [
      t`North of the equator a winter runs from July to June and is named by both years; south of it, it is the calendar year. It is complete when November to March (May to September in the south) has at least 95% of its nights, no month misses more than three, and no hole covers the nights on which at least half of the neighbouring stations had their coldest. Hits in other winters are listed beside the count, never in it.`,
    ],
    code: 'analysis/winter',
    sources: [t`a rule of this page`],
  },
  {
    title: t`What a tree stands`,
    paragraphs: [
      t`Each type has four thresholds, a temperature and the hours it must be held: fruit, leaf and twig, major limbs, life down to the graft. They hold for a mature, healthy, hardened tree; each has a range and a basis: found in its source, recalled, inferred from neighbours, or practice. Nearly all kill figures are inferred, so life is always shown as a band.`,
      t`Age, condition, hardening, container and rootstock move leaf, wood and life; a crop on the tree moves the same three. Fruit is never moved. Young and not hardened are one weakness: only the larger counts. Plus means hurt at a warmer temperature.`,
      t`Beside the plain reading stands one with duration: the harm of long cold at warmer levels, shifted by 1.6 °F (0.9 °C) times the natural logarithm of hours over four, held between −2 and +3 °F (−1.1 and +1.7 °C). This is a choice of ours and no source’s.`,
    ],
    code: 'analysis/tree',
    sources: [t`extension and research sources listed with each type`],
  },
  {
    title: t`What spot and cover add`,
    paragraphs: [
      t`Degrees are added to the air, on calm and on windy nights apart, each with a low and a high end; a night of unclear kind gets the smaller of the two. A yard’s degrees come from what is drawn in it: warmth of walls by side, heating and distance, the share of the sky that is hidden (computed from the heights drawn), paving, water, bare or mulched ground, cold air that collects in low ground or behind what dams it, shelter from the cold wind. Each cause counts once, the sum of warm ones at most 8 °F (4.4 °C) on calm and 3 °F (1.7 °C) on windy nights. Readings of an own thermometer take the place of the table: from ten nights of a kind on they stand alone.`,
      t`Of covers the largest counts, with lights and soil beside it; in wind a cover gains nothing unless it is tied to the ground. Banks and wraps gain at the graft only. Spot and cover together never gain more than 10 °F (5.6 °C) on calm and 5 °F (2.8 °C) on windy nights. Most of these degrees are the trade’s practice, few were measured: that is why the answer is given at both ends of them.`,
      t`Curves are drawn anew for every gain. Where the curve of a larger gain comes out with a shorter period, that shorter one is said for the smaller gain too, so that more cover never looks worse.`,
    ],
    code: 'analysis/answer/protection.ts',
    sources: [t`extension and research sources listed with each figure`, t`the trade’s practice`],
  },
  {
    title: t`Counted`,
    paragraphs: [
      t`A winter is hit when at least one night’s sustained cold, with whatever a spot or cover gains, is at or below the threshold with its penalties; both are compared in hundredths of a degree Celsius. Hits in n complete winters give the plain period n over hits; its 90% range is Wilson’s interval for the share, turned into winters.`,
    ],
    code: 'analysis/extremes/counted.ts',
    sources: ['Wilson 1927'],
  },
  {
    title: t`Fitted`,
    paragraphs: [
      t`With 20 or more complete winters a generalised extreme-value curve is fitted to the coldest level of each, turned over in sign, by L-moments; its bend is steadied by the neighbouring stations and kept from making any winter on record impossible. Maximum likelihood runs beside it as a check. Ranges come from redrawing the record 1,000 times from the curve with a fixed seed, so the same question always gets the same answer.`,
      t`The headline is the curve, its count always beside it, with a word where they disagree. Nothing is claimed beyond twice the record: then only “rarer than”. Under 20 winters only the count speaks; from 20 to 29 there is a warning.`,
    ],
    code: 'analysis/extremes/headline.ts',
    sources: [t`Hosking and Wallis 1997`, 'Coles 2001'],
  },
  {
    title: t`Between stations`,
    paragraphs: [
      t`A point has winters of its own, estimated from the stations around. Their mean and their spread come to it by a trend in height, height above the stations around (a slope or a hollow), nearness of the sea and latitude, and by kriging what the trend leaves: nearby stations count by distance, and by height, so that a slope is not told by its valley. How mild or hard each winter was for the land comes from the nearest stations that have it, with its spread restored.`,
      t`Mean and spread of a point may be off, together: hollows are colder than thought and vary more. How far is measured when the pack is built, by leaving a third of the stations out in turn. That error is in every chance, which is averaged over it, and in every range, beside the luck of few winters. The bend of the curve is the neighbouring stations’.`,
    ],
    code: 'analysis/place',
    sources: [t`Willmott and Robeson 1995`, 'Cressie 1993', t`Hosking and Wallis 1997`],
  },
  {
    title: t`Chance within some winters, and change`,
    paragraphs: [
      t`The chance of at least one hit within N winters is one minus the chance of N winters without, averaged over the redrawn curves, so that doubt about the curve is in it. Change over the years is judged by the Mann-Kendall test, Sen’s slope, and a curve whose place moves with the year; the headline stays with the whole record, since freezes of the past can come again.`,
    ],
    code: 'analysis/extremes/trend.ts',
    sources: ['Mann 1945', 'Kendall 1975', 'Sen 1968'],
  },
];

/** What no figure on this page can say. */
export const METHOD_LIMITS: readonly string[] = [
  t`No type is “hardy to” one temperature: hours, age and hardening belong to every figure.`,
  t`Hardening can move a threshold by 8 to 11 °F (4 to 6 °C): a freeze in November after warm weeks hurts more than a colder one in January.`,
  t`Hours rebuilt from two readings a day can be off by several on nights when a front came through.`,
  t`A station differs from a yard by 2 to 3 °F (1 to 1.7 °C) even on flat land, by more in hollows, near water or in town.`,
  t`A tree killed below its graft comes back as its rootstock.`,
  t`Thirty winters say little about once in a hundred, and freezes come in clusters.`,
];
