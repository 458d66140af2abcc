/** Moves that are told sooner than the next frame lie this far apart: some mice make a thousand of them a second. */
const APART_MS = 8;

/**
 * Tells of a pointer's moves as soon as the hand makes them, where the browser can: its own moves wait for the next frame,
 * and tell the last of them again then.
 */
export function atOnce(element: Element, moved: (event: PointerEvent) => void): { destroy(): void } {
  let lastMs = -Infinity;
  const raw = (event: Event) => {
    if (event.timeStamp - lastMs < APART_MS) return;
    lastMs = event.timeStamp;
    moved(event as PointerEvent);
  };
  const own = moved as EventListener;
  element.addEventListener('pointerrawupdate', raw);
  element.addEventListener('pointermove', own);
  return {
    destroy: () => {
      element.removeEventListener('pointerrawupdate', raw);
      element.removeEventListener('pointermove', own);
    },
  };
}
