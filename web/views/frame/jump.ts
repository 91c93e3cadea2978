/** How long after a jump parts that open on the way may still push its goal off, ms. */
const SETTLING_MS = 6000;

let jump: { readonly id: string; readonly at: number } | null = null;

/** The reader asked for a part by its link. */
export function jumpTo(id: string): void {
  jump = { id, at: performance.now() };
}

/** Brings the goal of a jump back into view after a part above it has opened; nothing once the reader scrolls on their own. */
export function settleJump(): void {
  if (!jump || performance.now() - jump.at > SETTLING_MS) return;
  document.getElementById(jump.id)?.scrollIntoView();
}

/** From here on the reader's own scrolling ends a jump; returns the way to stop watching. */
export function watchScrolling(): () => void {
  const end = (): void => void (jump = null);
  const events = ['wheel', 'touchmove', 'keydown', 'pointerdown'] as const;
  for (const name of events) addEventListener(name, end, { passive: true });
  return () => {
    for (const name of events) removeEventListener(name, end);
  };
}
