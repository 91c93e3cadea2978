import { getContext, setContext } from 'svelte';
import { t } from '../../analysis/language/t.ts';
import type { LevelAnswer, Ranking, TypeAnswer } from '../../analysis/answer/assessment.ts';
import type { PlaceRequest } from '../../analysis/answer/find-subject.ts';
import type { OpenPack } from '../data/open-pack.ts';
import type { OfflineState } from '../offline/offline-state.svelte.ts';
import type { TreeState } from '../../analysis/tree/penalties.ts';
import { typeName } from '../../analysis/tree/type-names.ts';
import { hemisphereOf } from '../format/dates.ts';
import { isEstimated } from '../format/estimated.ts';
import type { ProtectionTexts } from '../../analysis/answer/protection.ts';
import type { Place } from './chosen.ts';
import type { MapView } from '../map/map-view.ts';
import { AreaDraft } from './area-draft.svelte.ts';
import type { AnswerState } from './answer-state.svelte.ts';
import type { Choices } from './choices.svelte.ts';
import type { PackState } from './pack-state.svelte.ts';
import type { Storage } from './kept.ts';
import type { AssessQuestion, LaterPort, StationPeriodsQuestion } from './ports.ts';
import type { SurfaceState } from './surface-state.svelte.ts';
import { mapLevel } from './surface-ask.ts';
import { steady } from './steady.ts';
import { defaultPlace, resolvePlace, type ResolvedPlace } from './resolve-place.ts';
import type { ThemeChoice } from './theme.svelte.ts';

/** The type told about while the reader has opened none: the best documented one. */
export const FIRST_TYPE = 'satsuma_owari';

/** What all views share: the choices, the open pack, the answer, and what follows from them. */
export class PageState {
  readonly choices: Choices;
  readonly packs: PackState;
  readonly answer: AnswerState;
  readonly theme: ThemeChoice;
  readonly storage: Storage | null;
  /** What later parts of the page ask. */
  readonly later: LaterPort;
  readonly #sameQuestion = steady<AssessQuestion>();
  readonly #samePeriods = steady<StationPeriodsQuestion>();
  /** The area being drawn. */
  readonly draft = new AreaDraft();
  /** The map as drawn, for a picture of it; `null` before there is one. */
  mapView = $state.raw<MapView | null>(null);
  /** The surfaces the map shows; `null` before there is a map. */
  surfaces = $state.raw<SurfaceState | null>(null);
  /** Working without network; `null` until the first screen is done. */
  offline = $state.raw<OfflineState | null>(null);
  /** Sentences about parts of the address that made no sense. */
  ignored = $state.raw<readonly string[]>([]);

  constructor(parts: {
    choices: Choices;
    packs: PackState;
    answer: AnswerState;
    theme: ThemeChoice;
    storage: Storage | null;
    later: LaterPort;
  }) {
    this.choices = parts.choices;
    this.packs = parts.packs;
    this.answer = parts.answer;
    this.theme = parts.theme;
    this.storage = parts.storage;
    this.later = parts.later;
  }

  get pack(): OpenPack | null {
    return this.packs.open;
  }

  readonly #resolution = $derived.by(() => {
    const pack = this.packs.open;
    if (!pack) return null;
    const wanted = this.choices.place ?? defaultPlace(pack);
    const asked = resolvePlace(wanted, pack);
    if (asked.found) return { ...asked, place: wanted };
    const place = defaultPlace(pack);
    return { found: resolvePlace(place, pack).found, problem: asked.problem, place };
  });

  /** The place with its station; the default one while the chosen place can't be found. */
  get place(): ResolvedPlace | null {
    return this.#resolution?.found ?? null;
  }
  /** Why the chosen place can't be found. */
  get placeProblem(): string | null {
    return this.#resolution?.problem ?? null;
  }

  /** The place shown as it can be chosen again, `null` while no pack is open. */
  get placeChosen(): Place | null {
    return this.#resolution?.place ?? null;
  }
  /** The answer about the place shown; `null` while it is worked out, even if the one before is still on screen. */
  readonly told = $derived.by((): Ranking | null => {
    const { assessment, answered } = this.answer;
    const wanted = this.question;
    if (!assessment || !answered || !wanted || answered.packUrl !== wanted.packUrl) return null;
    return JSON.stringify(answered.place) === JSON.stringify(wanted.place) ? assessment : null;
  });

  /** Name of the place that the answer on screen is about, though another be chosen by now; before the first answer the place chosen. */
  readonly toldLabel = $derived.by((): string => {
    const place = this.answer.answered?.place;
    // An answer has a name of its own where the nearest station stands for the point.
    if (place?.by === 'point') return place.label;
    return (this.answer.assessment?.place ?? this.place)?.label ?? t`this place`;
  });
  /** The tree that the answer on screen is about. */
  get toldTree(): TreeState {
    return this.answer.answered?.tree ?? this.choices.tree;
  }

  /** Name of the place that something was asked about: an answer keeps it until there is another. */
  labelOf(place: PlaceRequest): string {
    if (place.by === 'point') return place.label;
    return this.pack?.stations.find(({ id }) => id === place.id)?.name ?? t`this place`;
  }

  /** True while the answer on screen tells of winters estimated from stations around. */
  readonly estimated = $derived.by(
    () => this.answer.assessment !== null && isEstimated(this.answer.assessment),
  );

  get hemisphere(): 'north' | 'south' {
    return hemisphereOf(this.place?.lat ?? 0);
  }

  readonly #sameProtection = steady<ProtectionTexts | null>();
  /** Where the tree stands and what is put over it, `null` in the open without a cover. */
  readonly protection = $derived.by((): ProtectionTexts | null => {
    const { spot, yard, measured, cover } = this.choices;
    const open = spot === null && measured === null && cover === null;
    return this.#sameProtection(
      open
        ? null
        : {
            spot,
            // A drawn yard tells of nothing until a spot in it is chosen.
            yard: spot?.startsWith('yard:') ? yard : null,
            measured,
            cover,
            hemisphere: this.hemisphere,
            container: this.choices.tree.container,
          },
    );
  });

  /** What to ask the worker now, `null` while no pack is open. */
  readonly question = $derived.by((): AssessQuestion | null => {
    const [pack, place] = [this.packs.open, this.place];
    if (!pack || !place) return null;
    return this.#sameQuestion({
      packUrl: pack.url,
      place: place.request,
      tree: this.choices.tree,
      years: this.choices.years,
      protection: this.protection,
    });
  });

  /** What to ask for the map. */
  readonly periodsQuestion = $derived.by((): StationPeriodsQuestion | null => {
    const pack = this.packs.open;
    if (!pack) return null;
    return this.#samePeriods({
      packUrl: pack.url,
      tree: this.choices.tree,
      protection: this.protection,
      typeId: this.focusId,
      level: mapLevel(this.choices.mapShows, this.choices.level),
    });
  });

  /** Id of the type told about in the headline, on the map and in the winters. */
  get focusId(): string {
    const { type } = this.choices;
    return type !== null && typeName(type) ? type : FIRST_TYPE;
  }
  /** What to say about a type that a link asked for and that doesn't exist. */
  get typeProblem(): string | null {
    const { type } = this.choices;
    return type === null || typeName(type) ? null : t`There is no type “${type}” in the catalogue.`;
  }
  readonly focus = $derived.by(
    (): TypeAnswer | null =>
      this.answer.assessment?.types.find(({ id }) => id === this.focusId) ??
      this.answer.assessment?.types[0] ??
      null,
  );
  readonly focusLevel = $derived.by(
    (): LevelAnswer | null => this.focus?.levels.find(({ level }) => level === this.choices.level) ?? null,
  );
}

const KEY = Symbol('page');

/** Hand the page's state to all components below. */
export function setPage(page: PageState): PageState {
  return setContext(KEY, page);
}

/** The page's state. @throws Error outside the page */
export function getPage(): PageState {
  const page = getContext<PageState | undefined>(KEY);
  if (!page) throw new Error('getPage() was called outside the page: no setPage() above it');
  return page;
}
