import type { Level } from '../../analysis/tree/levels.ts';
import { MATURE_TREE, type TreeState } from '../../analysis/tree/penalties.ts';
import type { TemperatureUnit } from '../format/unit.ts';
import type { Language } from '../language/languages.ts';
import type { Chosen, Corner, MapShows, MapWinters, Place } from './chosen.ts';
import { steady } from './steady.ts';

/** What the page assumes where the reader chose nothing. The default place and pack are the pack's affair. */
export interface ChoiceDefaults {
  readonly unit: TemperatureUnit;
}

/** How a change enters the browser's history: a real choice can be undone by Back, a slider in motion can't. */
export type ChoiceStep = 'push' | 'replace';

export const DEFAULT_LEVEL: Level = 'wood';
export const DEFAULT_YEARS = 10;
export const DEFAULT_AT_LEAST = 25;

/**
 * Everything the reader chose, over the defaults. Read the fields; write through `choose` so that each change
 * says whether it is a step in the history. Holds no browser object, so it is tested without one.
 */
export class Choices {
  #chosen = $state.raw<Chosen>({});
  #defaults: ChoiceDefaults;
  readonly #sameTree = steady<TreeState>();
  #listeners: readonly ((chosen: Chosen, step: ChoiceStep) => void)[] = [];

  /** Only what was chosen, for the address. */
  get chosen(): Chosen {
    return this.#chosen;
  }
  // Each choice is a value of its own: a click on the map must not set off what follows from the pack or the tree.
  readonly pack: string | null = $derived(this.#chosen.pack ?? null);
  /** `null`: the pack's own default place. */
  readonly place: Place | null = $derived(this.#chosen.place ?? null);
  /** Years since planting, `null` for a mature tree. */
  readonly ageYears: number | null = $derived(this.#chosen.ageYears ?? null);
  /** The tree as chosen, over the mature, vigorous, hardened tree that the catalogue's thresholds are for. */
  readonly tree: TreeState = $derived(
    this.#sameTree({
      ageYears: this.#chosen.ageYears ?? MATURE_TREE.ageYears,
      condition: this.#chosen.condition ?? MATURE_TREE.condition,
      fruitLoad: this.#chosen.fruitLoad ?? MATURE_TREE.fruitLoad,
      container: this.#chosen.container ?? MATURE_TREE.container,
      hardened: !(this.#chosen.notHardened ?? !MATURE_TREE.hardened),
      rootstock: this.#chosen.rootstock ?? MATURE_TREE.rootstock,
    }),
  );
  readonly level: Level = $derived(this.#chosen.level ?? DEFAULT_LEVEL);
  readonly years: number = $derived(this.#chosen.years ?? DEFAULT_YEARS);
  /** Type whose row is open, and the one map and winters show; `null`: none opened yet. */
  readonly type: string | null = $derived(this.#chosen.type ?? null);
  readonly showRootstocks: boolean = $derived(this.#chosen.showRootstocks ?? false);
  readonly #samePins = steady<readonly Place[]>();
  /** Places to compare. */
  readonly pins: readonly Place[] = $derived(this.#samePins(this.#chosen.pins ?? []));
  readonly #sameArea = steady<readonly Corner[] | null>();
  /** Corners of the area, `null` while there is none. */
  readonly area: readonly Corner[] | null = $derived(this.#sameArea(this.#chosen.area ?? null));
  readonly mapWinters: MapWinters = $derived(this.#chosen.mapWinters ?? 'all');
  readonly mapShows: MapShows = $derived(this.#chosen.mapShows ?? 'periods');
  /** Type held against the one shown on the map, `null`: the page's own choice. */
  readonly against: string | null = $derived(this.#chosen.against ?? null);
  readonly atLeast: number = $derived(this.#chosen.atLeast ?? DEFAULT_AT_LEAST);
  readonly spot: string | null = $derived(this.#chosen.spot ?? null);
  readonly yard: string | null = $derived(this.#chosen.yard ?? null);
  readonly measured: string | null = $derived(this.#chosen.measured ?? null);
  readonly cover: string | null = $derived(this.#chosen.cover ?? null);
  readonly life: string | null = $derived(this.#chosen.life ?? null);
  readonly wishes: string | null = $derived(this.#chosen.wishes ?? null);
  readonly sheet: string | null = $derived(this.#chosen.sheet ?? null);
  readonly counter: string | null = $derived(this.#chosen.counter ?? null);
  /** `null`: as kept, or as the reader's browser has it. */
  readonly language: Language | null = $derived(this.#chosen.language ?? null);
  readonly unit: TemperatureUnit = $derived.by(() => this.#chosen.unit ?? this.#defaults.unit);

  constructor(defaults: ChoiceDefaults, chosen: Chosen = {}) {
    this.#defaults = defaults;
    this.#chosen = chosen;
  }

  /** Change some choices; `undefined` takes one back to its default. */
  choose(change: { [K in keyof Chosen]?: Chosen[K] | undefined }, step: ChoiceStep = 'push'): void {
    const next = Object.fromEntries(
      Object.entries({ ...this.#chosen, ...change }).filter(([, value]) => value !== undefined),
    ) as Chosen;
    this.#chosen = next;
    for (const listener of this.#listeners) listener(next, step);
  }

  /** Take over a whole set (Back, a link) without telling the listeners, who are its origin. */
  restore(chosen: Chosen): void {
    this.#chosen = chosen;
  }

  /** Hear of every `choose`; returns the way to stop. */
  onChoose(listener: (chosen: Chosen, step: ChoiceStep) => void): () => void {
    this.#listeners = [...this.#listeners, listener];
    return () => {
      this.#listeners = this.#listeners.filter((entry) => entry !== listener);
    };
  }
}
