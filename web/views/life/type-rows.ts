import type { LifeAnswer, TypeLife } from '../../../analysis/answer/life.ts';
import { findType } from '../../../analysis/tree/catalogue.ts';

/** Types by the share living ten years in the colder reading, then in the other, most first; rootstocks only when asked for. */
export function typeRows({ types }: Pick<LifeAnswer, 'types'>, showRootstocks: boolean): readonly TypeLife[] {
  const shareOf = ({ share, followed, alive }: TypeLife['hardened']['ten_years']): number =>
    share ?? (followed === 0 ? -1 : alive / followed);
  return types
    .filter(({ id }) => showRootstocks || findType(id)?.use !== 'rootstock')
    .sort(
      (a, b) =>
        shareOf(b.night_by_night.ten_years) - shareOf(a.night_by_night.ten_years) ||
        shareOf(b.hardened.ten_years) - shareOf(a.hardened.ten_years) ||
        a.name.localeCompare(b.name, 'en'),
    );
}
