import { yardProblems, type YardProblem } from '../../../analysis/spot/check-yard.ts';
import type { Yard } from '../../../analysis/spot/yard.ts';
import {
  duplicated,
  findSpot,
  findThing,
  movedBy,
  putSpot,
  putThing,
  without,
} from '../../yard/edit-yard.ts';
import { YardHistory } from '../../yard/yard-history.ts';

/** The yard being drawn: what it was, what it is, what is being dragged, and what is wrong with it. */
export class YardDraft {
  #history = $state.raw(YardHistory.startingWith<Yard | null>(null));
  #moving = $state.raw<Yard | null>(null);
  #lastGood: Yard | null = null;
  /** The thing or spot that is told about and moved by the arrow keys. */
  selectedId = $state<string | null>(null);

  /** As settled: without what is being dragged. */
  get settled(): Yard | null {
    return this.#history.present;
  }
  /** As it is to be drawn. */
  readonly yard = $derived(this.#moving ?? this.#history.present);
  readonly busy = $derived(this.#moving !== null);
  readonly canUndo = $derived(this.#history.canUndo);
  readonly canRedo = $derived(this.#history.canRedo);
  readonly problems: readonly YardProblem[] = $derived(this.yard ? yardProblems(this.yard) : []);
  readonly wrongIds: readonly string[] = $derived(
    this.problems.flatMap(({ thingId }) => (thingId === null ? [] : [thingId])),
  );
  /** The yard as it was when it last could be reckoned with; now, if it can. */
  readonly good: Yard | null = $derived.by(() => {
    if (this.yard === null) this.#lastGood = null;
    else if (this.problems.length === 0) this.#lastGood = this.yard;
    return this.#lastGood;
  });

  /** A yard from outside: a file, a link, a ready one. A step that can be undone. */
  open(yard: Yard | null): void {
    this.#moving = null;
    this.selectedId = null;
    this.#history = this.#history.do(yard);
  }

  /** A yard that was there before anything was done. */
  startWith(yard: Yard | null): void {
    this.#moving = null;
    this.#history = YardHistory.startingWith(yard);
  }

  /** Steps with the same `run` one after another are undone together. */
  change(next: Yard, run: string | null = null): void {
    this.#moving = null;
    this.#history = this.#history.do(next, run);
  }

  /** On the way, not settled. */
  moving(next: Yard): void {
    this.#moving = next === this.settled ? null : next;
  }

  undo(): void {
    this.#moving = null;
    this.#history = this.#history.undo();
    this.#keepSelection();
  }

  redo(): void {
    this.#moving = null;
    this.#history = this.#history.redo();
    this.#keepSelection();
  }

  /** Moves what is selected, by metres; steps in a row are undone together. */
  nudge(id: string, eastM: number, northM: number): void {
    const yard = this.settled;
    if (!yard) return;
    const [thing, spot] = [findThing(yard, id), findSpot(yard, id)];
    if (thing) this.change(putThing(yard, movedBy(thing, [eastM, northM], yard)), `nudge ${id}`);
    else if (spot) this.change(putSpot(yard, movedBy(spot, [eastM, northM], yard)), `nudge ${id}`);
  }

  remove(id: string): void {
    if (!this.settled) return;
    this.change(without(this.settled, id));
    this.selectedId = null;
  }

  duplicate(id: string): void {
    if (!this.settled) return;
    const copy = duplicated(this.settled, id);
    this.change(copy.yard);
    this.selectedId = copy.id;
  }

  #keepSelection(): void {
    const { yard, selectedId } = this;
    if (yard && (findThing(yard, selectedId) || findSpot(yard, selectedId))) return;
    this.selectedId = null;
  }
}
