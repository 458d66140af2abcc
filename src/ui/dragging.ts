interface Drag {
  /** In the element's own pixels. */
  readonly moved: (x: number, y: number, event: PointerEvent) => void;
  readonly lifted?: () => void;
}

/** Tells where a pointer is over an element, from when it is put down until it is lifted. */
export function dragging(element: HTMLElement, given: Drag): { update(next: Drag): void; destroy(): void } {
  let drag = given;
  const tell = (event: PointerEvent) => {
    const box = element.getBoundingClientRect();
    drag.moved(event.clientX - box.left, event.clientY - box.top, event);
  };
  const down = (event: PointerEvent) => {
    if (event.button !== 0) return;
    element.setPointerCapture(event.pointerId);
    tell(event);
  };
  const move = (event: PointerEvent) => {
    if (element.hasPointerCapture(event.pointerId)) tell(event);
  };
  const lifted = () => drag.lifted?.();
  element.addEventListener('pointerdown', down);
  element.addEventListener('pointermove', move);
  element.addEventListener('lostpointercapture', lifted);
  return {
    update: (next) => (drag = next),
    destroy: () => {
      element.removeEventListener('pointerdown', down);
      element.removeEventListener('pointermove', move);
      element.removeEventListener('lostpointercapture', lifted);
    },
  };
}
