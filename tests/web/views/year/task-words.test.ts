import { describe, expect, it } from 'vitest';
import {
  basisWords,
  inOrderOfTheYear,
  sourceNames,
  taskDates,
  whyWords,
} from '../../../../web/views/year/task-words.ts';
import { madeTask, plain } from './made-year.ts';

describe('tasks in words', () => {
  it('tells spans, days to be ready by, and days from which on', () => {
    expect(plain(taskDates(madeTask()))).toBe('by 27 Nov');
    expect(plain(taskDates(madeTask({ id: 'plant' }), 'long'))).toBe('from 27 November');
    expect(plain(taskDates(madeTask({ to: '12-05' })))).toBe('27 Nov to 5 Dec');
  });

  it('says whose word the dates are, and never "no source" beside sources', () => {
    expect(basisWords(madeTask({ basis: 'practice', sources: ['practice'] }))).toBe(
      'common practice, no source',
    );
    expect(basisWords(madeTask({ basis: 'practice', sources: ['practice', 'S19'] }))).toBe('common practice');
    expect(sourceNames(madeTask({ sources: ['practice', 'S19'] }))).toEqual([
      expect.stringContaining('satsuma freeze risk'),
    ]);
  });

  it('gives the reason in the unit shown, with a true minus', () => {
    const task = madeTask({ why: 'A night at or below 28 °F (-2.2 °C) came.' });
    expect(plain(whyWords(task, 'F'))).toBe('A night at or below 28 °F came.');
    expect(plain(whyWords(task, 'C'))).toBe('A night at or below −2.2 °C came.');
  });

  it('begins the year in July, in the south in January', () => {
    const tasks = [madeTask({ from: '03-01' }), madeTask({ from: '08-15' }), madeTask({ from: '11-01' })];
    const months = (hemisphere: 'north' | 'south'): string[] =>
      inOrderOfTheYear(tasks, hemisphere).map(({ from }) => from.slice(0, 2));
    expect(months('north')).toEqual(['08', '11', '03']);
    expect(months('south')).toEqual(['03', '08', '11']);
  });
});
