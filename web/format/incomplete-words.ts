import { said, t } from '../../analysis/language/t.ts';
import { MONTH_NAMES } from '../../analysis/units/calendar.ts';
import { monthName } from './dates.ts';

const NIGHTS = /^only (\d+) of (\d+) nights$/;
const MONTH = /^([A-Z][a-z]+) misses (\d+) nights$/;
const MONTHS = /^([A-Z][a-z]+) or ([A-Z][a-z]+) misses more than 3 nights$/;
const COLDEST = /^misses (\d{4}-\d{2}-\d{2}), the coldest night at (\d+) of (\d+) neighbours$/;

/**
 * Why a winter isn't complete, as a pack tells it (`analysis/winter/completeness.ts`), in the language of the page. Packs are
 * the same for readers of every language, so the reason is stored in English and told apart here.
 */
export function incompleteWords(reason: string): string {
  const nights = NIGHTS.exec(reason);
  if (nights) return t`only ${nights[1]} of ${nights[2]} nights`;
  const month = MONTH.exec(reason);
  if (month) return t`${nameOf(month[1])} misses ${month[2]} nights`;
  const months = MONTHS.exec(reason);
  if (months) return t`${nameOf(months[1])} or ${nameOf(months[2])} misses more than 3 nights`;
  const coldest = COLDEST.exec(reason);
  if (coldest) return t`misses ${coldest[1]}, the coldest night at ${coldest[2]} of ${coldest[3]} neighbours`;
  return said(reason);
}

function nameOf(month: string): string {
  const at = MONTH_NAMES.findIndex((name) => name === month);
  return at < 0 ? month : monthName(at + 1);
}
