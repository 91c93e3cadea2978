import { pointOfSpot } from '../../../analysis/spot/spot-text.ts';
import { readYardText } from '../../../analysis/spot/yard-text.ts';
import { typeName } from '../../../analysis/tree/type-names.ts';
import { t } from '../../../analysis/language/t.ts';
import { LEVEL_WORDS } from '../../format/level-words.ts';
import { readKept } from '../../state/kept.ts';
import type { PageState } from '../../state/page.svelte.ts';
import { Resting } from '../../state/resting.ts';
import { LENGTH_KEY, LENGTH_UNITS } from '../../yard/lengths.ts';
import { shownSurface, standingTitle } from '../map/surface-words.ts';
import { sheetLink } from './sheet-link.ts';
import { grabMap } from './sheet-map.ts';
import { drawPlan } from './sheet-plan.ts';
import type { SheetMapShown, SheetShown } from './sheet-shown.ts';

/** Rest after the last change before pictures are made anew, ms: taking the map's picture holds the page for a moment. */
const REST_MS = 500;

/** The pictures of the sheet: map, yard and code, made anew once the page rests. */
export class SheetPictures {
  #shown = $state.raw<Omit<SheetShown, 'strip'>>({ map: null, noMap: '', plan: null, link: null });
  #turn = 0;
  readonly #rest = new Resting<true>(REST_MS, () => void this.renew());

  constructor(
    private readonly page: PageState,
    private readonly sheet: () => HTMLElement | null,
  ) {}

  get shown(): Omit<SheetShown, 'strip'> {
    return this.#shown;
  }

  /** Something they show has changed. */
  later(): void {
    this.#rest.now(true);
  }

  stop(): void {
    this.#turn++;
    this.#rest.now(null);
  }

  /** Makes them now. */
  async renew(): Promise<void> {
    this.#rest.now(null);
    const sheet = this.sheet();
    const turn = ++this.#turn;
    if (!sheet) return;
    const { map, noMap } = this.#map(sheet);
    const { origin, pathname } = location;
    const [plan, link] = await Promise.all([
      this.#plan(sheet).catch(() => null),
      sheetLink(this.page.choices.chosen, origin + pathname),
    ]);
    if (turn === this.#turn) this.#shown = { map, noMap, plan, link };
  }

  #map(sheet: HTMLElement): { map: SheetMapShown | null; noMap: string } {
    const { mapView, surfaces, place, pack, focusId, choices } = this.page;
    const none = (noMap: string) => ({ map: null, noMap });
    if (!mapView || !place) return none(t`No map: this browser did not draw one.`);
    const answer = surfaces?.answer?.ask.first.packUrl === pack?.url ? surfaces?.answer : null;
    const nameOf = (id: string): string => typeName(id) ?? id;
    const surface = answer ? shownSurface(answer, choices.atLeast, nameOf) : null;
    if (surface?.view.mode === 'difference')
      return none(
        t`The map on the page compares, which greys can’t tell. Let it show how often, and it stands here.`,
      );
    const picture = grabMap(mapView, sheet, place);
    if (!picture) return none(t`No map: this browser did not draw one.`);
    const { typeId, level, protection } = answer?.ask.first ?? {
      typeId: focusId,
      level: choices.level,
      protection: this.page.protection,
    };
    const name = nameOf(typeId);
    const title = standingTitle(`${name}, ${LEVEL_WORDS[level].label.toLowerCase()}`, protection);
    return { map: { picture, title, surface }, noMap: '' };
  }

  async #plan(sheet: HTMLElement): Promise<SheetShown['plan']> {
    const { spot, yard, unit } = this.page.choices;
    const at = pointOfSpot(spot);
    if (!at || yard === null) return null;
    const lengths = readKept(this.page.storage, LENGTH_KEY, LENGTH_UNITS) ?? (unit === 'F' ? 'ft' : 'm');
    return drawPlan(readYardText(yard), at, sheet, lengths);
  }
}
